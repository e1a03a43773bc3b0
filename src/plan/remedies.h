#pragma once
// What to say of a bend that no setting takes: why, and what would.

#include "plan/search.h"

namespace kerfpacket::plan {

/// The refusal of a board, at the place in the job file that asks for it. `depth` is the one that the job gives, if it
/// does. The hint names whatever would do: free settings, a larger radius, a thinner board, laminated plies with the
/// lengths of their blanks, another material. Whatever is kerfed was run through `attempt` before it is named.
job::Diagnostics nothing_works(const Request& wanted, const Bent& bent, std::optional<Length> depth,
                               const job::Job& job);

/// The board with nothing of its cut given.
job::Board all_left_to_solve(const job::Board& board);

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

}  // namespace kerfpacket::plan
