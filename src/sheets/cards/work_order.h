#pragma once
// The work order: a page that is handed out with a piece, the board drawn and each step with a box, its figure and the
// page that tells the rest.

#include <vector>

#include "sheets/layout/draft.h"
#include "sheets/layout/page_index.h"

namespace kerfpacket::sheets {

/// Adds the work order of one piece: one page, unless the shop's type is so large that its steps need more. It does not
/// know yet where other sheets stand.
void add_work_order(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit);

/// The same pages, set like the first of them, with the numbers of the pages that it sends to: `index` tells where all
/// other sheets stand. How many pages it takes does not hang on that.
Drafts numbered_work_order(const Draft& first, const plan::Plan& plan, const plan::Piece& piece,
                           const std::vector<IndexEntry>& index, const Kit& kit);

}  // namespace kerfpacket::sheets
