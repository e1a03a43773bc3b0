#pragma once
// What to buy for the whole job, and what to cut from each board.

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

/// A purchase list, then a ticket for each board of stock; nothing where the job has no stock plan.
void add_stock_sheet(Drafts& drafts, const plan::Plan& plan, const Kit& kit);

}  // namespace kerfpacket::sheets
