#pragma once
// What a sheet has to warn of, as keys and values for the words of a language.

#include "curve/shape.h"
#include "plan/plan.h"

namespace kerfpacket::plan {

/// A miss without its sign and without what is finer than a tape tells.
Length to_hundredths(Length value);

/// Every concern of the bend, then stock, saw and settings. The piece must be complete but for its cautions.
std::vector<Caution> find_cautions(const Piece& piece, const job::Job& job);

/// What an opening as a whole has to warn of, added to its first board: entry of a horseshoe, springs that differ, and
/// what measured ordinates say.
void add_head_cautions(Piece& piece, const curve::Head& head, const job::Opening& opening);

/// What measured ordinates say: a suspect, a fit that is not the recommended one, a curve smoothed beyond the tape,
/// points too far apart.
void add_survey_cautions(Piece& piece);

}  // namespace kerfpacket::plan
