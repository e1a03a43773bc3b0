#pragma once
// A board made of thinner ones, bent one over the other and glued.

#include "plan/search.h"

namespace kerfpacket::plan {

/// Plies that are bent one over the other and glued: how many, how each is cut, how long each blank is, from the seen
/// ply to the wall.
struct Plies {
    int count = 0;
    Length thickness;
    std::optional<Setting> cut;  ///< of each, where a ply does not bend without kerfs
    double utilisation = 0;
    std::vector<Length> blanks;  ///< trim and tails included
};
/// The fewest plies, two to twelve of at least 1/16 in, of which each is ok, or else a caution; none where there are
/// none.
std::optional<Plies> plies(const Request& wanted, const Bent& bent, measure::Unit unit);

/// Whether every seen face that such a board has is wider round than it is thick.
bool has_room(const Bent& bent);

}  // namespace kerfpacket::plan
