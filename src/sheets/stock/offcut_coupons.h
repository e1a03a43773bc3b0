#pragma once
// Which coupons are sawn from the offcuts of the stock plan.

#include <string>
#include <vector>

#include "plan/house.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::sheets {

/// Coupons of one board.
struct Coupons {
    std::string piece;
    int count = 0;
    measure::Length length;  ///< of each
};

struct OffcutCoupons {
    std::vector<std::vector<Coupons>> of_sticks;  ///< for each stick of the section, what its offcut gives
    std::vector<Coupons> no_offcut;               ///< what no offcut is long enough for
    std::vector<measure::Length> rest{};          ///< for each stick, what is left of its offcut then
};

/// Of each section of the job's stock plan: the longest coupons first, each from the shortest offcut that holds it. A
/// board that is judged by a coupon of its own needs none.
std::vector<OffcutCoupons> offcut_coupons(const plan::Plan& plan, const Kit& kit);

/// How many coupons the records of these jobs' packets ask for, by the same rule.
int coupons_asked(const plan::House& house, const Kit& kit);

}  // namespace kerfpacket::sheets
