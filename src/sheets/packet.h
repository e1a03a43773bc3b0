#pragma once
// Plan in, Document out: the sheets of a packet in their order.

#include <cstddef>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "page/document.h"
#include "plan/plan.h"
#include "sheets/changes.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::sheets {

/// What of a packet is printed again. What is left empty leaves nothing out; what is given narrows it further.
struct Part {
    std::vector<std::string> sheets;                         ///< kinds of sheets: page::Page::sheet
    std::vector<std::pair<std::size_t, std::size_t>> pages;  ///< from, to; numbers in the whole packet
    std::optional<int> from_cut;                             ///< strips and checklists with this kerf, and those after
    std::optional<int> strip;                                ///< pages with the strip of this number

    bool whole() const { return sheets.empty() && pages.empty() && !from_cut && !strip; }
};

/// The kinds of sheets, in packet order.
const std::vector<std::string>& sheet_kinds(const Kit& kit);

/// Lays out the whole packet, or a part of it with the pages, numbers and marks of the whole, each page stamped as a
/// reprint; a part in which nothing is left has no pages. Throws fonts::MissingCharacter when no face has a character
/// of the job, and std::runtime_error when a template lacks a word.
page::Document make_packet(const plan::Plan& plan, const Kit& kit, const Part& part = {});

/// The packet of a revision that takes the place of one before it: a change page is in it.
page::Document make_packet(const Revision& now, const Revision& before, const Kit& kit, const Part& part = {});

}  // namespace kerfpacket::sheets
