#pragma once
// The cover: drawings, pieces, verdicts, cautions, page index, totals, revision.

#include <cstddef>
#include <string>
#include <vector>

#include "sheets/layout/draft.h"
#include "sheets/layout/page_index.h"

namespace kerfpacket::sheets {

/// Adds the cover's pages; `pages` is the number of pages of the whole packet.
void add_cover(Drafts& drafts, const plan::Plan& plan, const std::vector<IndexEntry>& index, std::size_t pages,
               const Kit& kit);

}  // namespace kerfpacket::sheets
