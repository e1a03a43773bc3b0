#pragma once
// The room that a sheet has on its paper.

#include "page/document.h"
#include "plan/plan.h"

namespace kerfpacket::sheets {

using measure::Length;

/// What a page is for decides on which paper it is printed.
enum class Use { cards, strips, templates };

/// Paper as the sheets see it, upright. Every sheet keeps 1/4 in free at the edges of the paper; where the printer
/// needs more, this is smaller than the paper by what it needs more.
struct Paper {
    Length width;
    Length height;      ///< of a roll the longest page
    bool roll = false;  ///< pages are laid out with the feed from left to right, as high as the roll is wide
};

Paper paper_for(const plan::Plan& plan, Use use);
const job::Media& media_for(const plan::Plan& plan, Use use);
/// The measured printer that this is printed on; none where the printer was not measured. What was measured with cut
/// sheets says nothing of a roll, which is printed on another printer.
const job::Profile* profile_for(const plan::Plan& plan, Use use);

/// Puts a finished page on its paper: a roll's page is turned with the feed, a sheet's page gets the edges back that
/// the printer cannot reach, and both the correction of a printer that was measured.
void put_on_paper(page::Page& page, const plan::Plan& plan, Use use);

/// Where a roll's page of this length ends: at the next 1/12 in, that is whole points and, at 300 or 600 dots to the
/// inch, whole dots. Print filters count paper in those, and move or shrink what is neither.
Length roll_page_end(Length length);

}  // namespace kerfpacket::sheets
