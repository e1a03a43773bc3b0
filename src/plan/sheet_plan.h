#pragma once
// Strips from sheets: ripped along them, then crosscut.

#include <string>
#include <vector>

#include "plan/stock_plan.h"

namespace kerfpacket::plan {

/// What is cut from sheets of one material and thickness.
struct FromSheets {
    std::string material;
    bool own_material = false;
    bool grain = false;
    Length thickness;
    std::vector<StockBlank> blanks;  ///< the longest first
};

/// One width to a strip, all strips of a section as long as one of its sheets and one way: along the grain, or where
/// the board has none, along that side by which less is bought. For each width the fewest strips are sought, then the
/// cheapest sheets for these. What no plan of that kind undercuts is found as if each sheet were as long as the
/// longest. `plan` tells kerf and trims.
SheetSection plan_sheets(FromSheets wanted, const job::Stock& stock, const StockPlan& plan, job::Diagnostics& refused);

}  // namespace kerfpacket::plan
