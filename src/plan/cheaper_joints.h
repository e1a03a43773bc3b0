#pragma once
// Where else a board could be spliced, so that less stock is bought.

#include "plan/plan.h"

namespace kerfpacket::plan {

/// Moves the joints that the program chose, board by board and one joint at a time, and packs the stock again. What
/// buys less is laid out in earnest, and told beside the plan, in `StockSection::cheaper`: the straightest joints stay
/// what is cut. The plan must have a stock plan of its own pieces.
void add_cheaper_joints(Plan& plan, const job::Job& job);

}  // namespace kerfpacket::plan
