#pragma once
// What a sheet has to warn of, as keys and values for the words of a language.

#include "job/job.h"
#include "plan/piece.h"

namespace kerfpacket::plan {

/// All of a piece that is complete but for its cautions: a slip of the tape, the bend and the board, its place, what
/// measured points say.
std::vector<Caution> all_cautions(const Piece& piece, const std::vector<Caution>& of_place, const job::Job& job);

}  // namespace kerfpacket::plan
