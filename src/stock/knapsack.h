#pragma once
// What blanks are best cut from one stick, by the prices of blanks: a knapsack with as many of each as are wanted.

#include <cstdint>
#include <vector>

#include "stock/problem.h"

namespace kerfpacket::stock {

/// A price of each kind of blank, in whole numbers, 0 or more.
using Prices = std::vector<std::int64_t>;

/// One run answers every stick up to the longest. After Gilmore and Gomory, "A linear programming approach to the
/// cutting stock problem", Operations Research 9 (1961); counts in powers of two, as is usual for bounded knapsacks.
class Knapsack {
public:
    /// At most `most` of each kind; kinds that have no price are not cut.
    Knapsack(const Problem& problem, const Counts& most, const Prices& prices);

    /// The highest sum of prices that a stick of this room holds.
    std::int64_t best(Units room) const { return best_[static_cast<std::size_t>(room)]; }
    /// A load that has it.
    Counts load(Units room) const;

private:
    struct Part {
        std::size_t kind = 0;
        int count = 0;
        Units weight = 0;
        std::vector<char> taken;  ///< by room
    };

    void add(Part part, std::int64_t worth);

    std::size_t kinds_;
    std::vector<std::int64_t> best_;
    std::vector<Part> parts_;
};

}  // namespace kerfpacket::stock
