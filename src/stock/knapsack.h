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
/// While there are few of them, only the rooms are kept at which a stick holds more than a shorter one: after Nemhauser
/// and Ullmann, "Discrete dynamic programming and capital allocation", Management Science 15 (1969). Many short blanks
/// make many such rooms; from then on there is a table of all.
class Knapsack {
public:
    /// At most `most` of each kind; kinds that have no price are not cut.
    Knapsack(const Problem& problem, const Counts& most, const Prices& prices);

    /// The highest sum of prices that a stick of this room holds.
    std::int64_t best(Units room) const;
    /// A load that has it.
    Counts load(Units room) const;
    /// What it took to find out, in steps: one a room that was kept or, of a table, for so many that take as long.
    std::int64_t work() const { return work_; }

private:
    /// From this room on a stick holds so much.
    struct Step {
        Units room = 0;
        std::int64_t worth = 0;
    };
    struct Part {
        std::size_t kind = 0;
        int count = 0;
        Units weight = 0;
        std::int64_t worth = 0;
        std::vector<char> taken{};  ///< by room, of a part that was added to the table
    };

    void add(Part part);
    void add_to_steps(const Part& part);
    void add_to_table(Part& part);
    void make_table();
    /// By so many of the parts, from the first on, of which there are steps.
    std::int64_t best(std::size_t parts, Units room) const;
    /// Whether a stick of this room holds more with that part than with those before it alone.
    bool takes(std::size_t part, Units room) const;

    std::size_t kinds_;
    Units longest_;
    std::vector<Part> parts_{};
    std::vector<Step> steps_{{}};            ///< of no part, of the first, of the first two and so on
    std::vector<std::size_t> begins_{0, 1};  ///< in `steps_`, of each of those; the last is their end
    std::vector<std::int64_t> table_{};      ///< best by room; empty while there are steps of all parts
    std::int64_t work_ = 0;
};

}  // namespace kerfpacket::stock
