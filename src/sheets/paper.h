#pragma once
// The room that a sheet has on its paper.

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

}  // namespace kerfpacket::sheets
