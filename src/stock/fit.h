#pragma once
// Whether blanks go into given sticks, by a search that knows how much it may still waste.

#include <cstdint>
#include <optional>
#include <vector>

#include "stock/knapsack.h"

namespace kerfpacket::stock {

enum class Fits { yes, no, not_known };

struct Fitted {
    Fits answer = Fits::no;
    std::vector<Load> loads{};
};

/// Puts all blanks into the sticks, if they go. By any prices of the blanks, a stick holds no more than its knapsack
/// says; what the sticks hold beyond the worth of the blanks is all that may be wasted, so that a load which wastes
/// more is not tried. `steps` is what the search may still do, and goes down: a number, never a time, so that the
/// answer is the same on every machine.
Fitted fit(const Problem& problem, const Counts& sticks, const Prices& prices, std::int64_t& steps);

}  // namespace kerfpacket::stock
