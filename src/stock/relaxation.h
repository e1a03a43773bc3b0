#pragma once
// The plan that may take parts of sticks: it bounds what any plan costs, and prices the blanks.

#include <cstdint>
#include <limits>
#include <vector>

#include "stock/knapsack.h"
#include "stock/problem.h"

namespace kerfpacket::stock {

/// A load and how often the relaxed plan cuts it.
struct Share {
    Load load;
    double times = 0;
};

struct Relaxation {
    Cost bound = 0;             ///< no plan costs less; true whatever the arithmetic in doubles did
    Prices prices;              ///< of blanks, scaled
    std::vector<Share> shares;  ///< that are cut at all, in the order of the kinds
};

/// What no plan undercuts, from any prices of blanks, in whole numbers (Farley, "A note on bounding a class of linear
/// programming problems, including cutting stock problems", Operations Research 38 (1990)). What the rack can hold of
/// the worth of all blanks is taken off first.
Cost proved_bound(const Problem& problem, const Prices& prices, const Knapsack& knapsack);

/// Solves it by column generation; ends early once the bound is `enough`, or when `steps`, which go down by the work of
/// its knapsacks, are used up: then the bound holds as well, but is further from the plan. The problem must be
/// prepared.
Relaxation relax(const Problem& problem, std::int64_t& steps, Cost enough = std::numeric_limits<Cost>::max());

}  // namespace kerfpacket::stock
