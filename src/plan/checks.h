#pragma once
// What cannot be done with a board, said at the place in the job file that asks for it.

#include <string>

#include "curve/outline.h"
#include "curve/survey.h"
#include "plan/blank.h"
#include "plan/cut.h"

namespace kerfpacket::plan {

/// Web and land. The job reader has judged what is written out; here what was left to the program is judged
/// too.
job::Diagnostics check_board(const job::Board& board, const job::Job& job);

/// Liners on both sides that leave nothing of the opening.
job::Diagnostics check_span(const job::Opening& opening, Length span, const job::Job& job);

/// A bend that takes no kerf, or more than `most_kerfs`, or whose kerfs given by hand are not on it.
job::Diagnostics check_kerfs(const Blank& blank, const Cutting& cut, std::size_t kerfs, const job::Board& board,
                             const job::Job& job);

/// The measured point that looks mistyped, told where a board is refused: a slip of the tape makes bends that the wall
/// does not have.
job::Diagnostics slips(const std::optional<curve::Survey>& survey, const std::optional<job::Ordinates>& ordinates,
                       const job::Job& job);

/// A face or an edge whose line folds on itself. `what` follows "the": "casing".
job::Diagnostic folded(const curve::Fold& fold, job::Position at, const job::Told& what, const job::Job& job);

}  // namespace kerfpacket::plan
