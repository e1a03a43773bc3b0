#pragma once
// What cannot be done with a board, said at the place in the job file that asks for it.

#include "plan/plan.h"

namespace kerfpacket::plan {

/// Material, web, land, radius and span; looks at what is known before any length is computed. The job reader has
/// judged what is written out; here what was left to the program is judged too.
job::Diagnostics check_board(const Piece& piece, const job::Board& board, const job::Job& job);

/// More kerfs than anybody would cut by hand in one board: a slip in a unit.
inline constexpr std::size_t most_kerfs = 5000;

/// A bend with no kerf in it, or with more than `most_kerfs`.
job::Diagnostics check_kerfs(const Piece& piece, const job::Board& board, const job::Job& job);

}  // namespace kerfpacket::plan
