#pragma once
// What the set-up card says of mistakes: a setting a little off, one kerf too deep.

#include <optional>
#include <string>
#include <vector>

#include "plan/piece.h"
#include "sheets/layout/figure_table.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// Each setting a little less and a little more; what is worse than the piece as meant stands bold.
FigureTable small_errors(const plan::Piece& piece, const Kit& kit, const Tape& tape);

/// To which depth one kerf is kept, eased and filled.
FigureTable deep_kerf_table(const plan::Piece& piece, const Kit& kit, const Tape& tape);
/// What to do about a kerf that was cut too deep, and why.
std::string deep_kerf_text(const plan::DeepKerf& kerf, const Kit& kit, const Tape& tape);

}  // namespace kerfpacket::sheets
