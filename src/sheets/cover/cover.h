#pragma once
// The cover: drawings, pieces, verdicts, cautions, page index, totals, revision.

#include <cstddef>
#include <string>
#include <vector>

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

/// A line of the page index: pages from 0.
struct IndexEntry {
    std::string title;
    std::size_t first = 0;
    std::size_t last = 0;
};

/// Adds the cover's pages; `pages` is the number of pages of the whole packet.
void add_cover(Drafts& drafts, const plan::Plan& plan, const std::vector<IndexEntry>& index, std::size_t pages,
               const Kit& kit);

}  // namespace kerfpacket::sheets
