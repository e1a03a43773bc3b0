#pragma once
// What a sheet has to warn of, as keys and values for the words of a language.

#include "plan/plan.h"

namespace kerfpacket::plan {

/// Every concern of the bend, then stock, saw and settings. The piece must be complete but for its cautions.
std::vector<Caution> find_cautions(const Piece& piece, const job::Board& board, const job::Job& job);

}  // namespace kerfpacket::plan
