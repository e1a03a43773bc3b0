#pragma once
// Blanks and sticks in whole numbers: what is to be cut from what, and a plan that does it.

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace kerfpacket::stock {

/// Lengths in whole units. That of a blank holds one kerf, that of a stick too, so that n blanks cost n - 1 kerfs.
using Units = std::int64_t;
/// What a plan costs, in whole numbers: cents, or the length that is bought.
using Cost = std::int64_t;

/// A length of stock, as many as wanted, or as the rack holds.
struct Stick {
    Units room = 0;
    Cost price = 0;             ///< of one; 0 for what lies in the rack
    std::optional<int> most{};  ///< how many lie in the rack; none: for sale

    bool for_sale() const { return !most; }
};

/// Blanks of one length.
struct Kind {
    Units length = 0;
    int wanted = 1;
};

/// How many of each kind, or of each stick.
using Counts = std::vector<int>;

struct Problem {
    std::vector<Stick> sticks;
    std::vector<Kind> kinds;
};

/// A stick and what is cut from it.
struct Load {
    std::size_t stick = 0;
    Counts of;
};

struct Plan {
    std::vector<Load> loads;
    Cost cost = 0;
};

Units weight(const Problem& problem, const Counts& load);
/// The longest room of all sticks.
Units longest_room(const Problem& problem);
Counts wanted(const Problem& problem);
/// How many sticks there are of each: what the rack holds, of others as many as there are blanks.
Counts available(const Problem& problem);

/// A problem in the form that the searches need: kinds longest first and each length once, sticks shortest first,
/// none that is shorter than another and no cheaper, prices without their common divisor, and something for sale that
/// holds the longest blank.
struct Prepared {
    Problem problem;
    Cost divisor = 1;                    ///< of the prices
    std::vector<std::size_t> stick_of;   ///< in the problem given, of each stick
    std::optional<std::size_t> made_up;  ///< a stick that nobody sells, dearer than all others together
};
Prepared prepared(const Problem& problem);

/// The loads on the sticks where they cost least: the heaviest that the rack holds on the rack, each other one on the
/// cheapest stick that holds it. That is the best for these loads: a lighter load fits wherever a heavier one does, and
/// saves no more. Empty where one fits on nothing that is left.
std::optional<Plan> on_sticks(const Problem& problem, std::vector<Counts> loads);

}  // namespace kerfpacket::stock
