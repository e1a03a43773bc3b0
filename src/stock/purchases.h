#pragma once
// Which purchases are still possible, by bounds on the purchase itself.

#include <cstdint>
#include <optional>
#include <vector>

#include "stock/problem.h"

namespace kerfpacket::stock {

/// A whole weight of each stick and what no plan undercuts: the sum of weights of the sticks that are used.
struct Cut {
    std::vector<Cost> weights;
    Cost least = 0;
};

struct Cuts {
    std::vector<Cut> cuts;
    std::vector<Plan> plans;  ///< that were found beside them
};

/// The relaxation solved with small whole weights, rising with the length of what is for sale, in place of prices.
/// Prices in cents have no common divisor, so that the bound by them rounds up to next to nothing; these do not. Fewer
/// of both where the steps do not suffice.
Cuts cuts_of(const Problem& problem, std::int64_t& steps);

struct Purchase {
    Cost cost = 0;
    Counts sticks;  ///< of each stick: bought, or in the rack
};

/// The purchases from `least` to below `below` that all cuts allow, the cheapest first; nothing where there are too
/// many to be tried.
std::optional<std::vector<Purchase>> purchases(const Problem& problem, const std::vector<Cut>& cuts, Cost least,
                                               Cost below);

}  // namespace kerfpacket::stock
