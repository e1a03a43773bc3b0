#pragma once
// Which coupons are sawn from the offcuts of the stock plan.

#include <string>
#include <vector>

#include "plan/plan.h"

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
};

/// The longest coupons first, each from the shortest offcut that holds it. A board that is judged by a coupon of its
/// own needs none.
OffcutCoupons offcut_coupons(const plan::Plan& plan, const plan::StockSection& section);

}  // namespace kerfpacket::sheets
