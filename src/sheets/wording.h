#pragma once
// Sentences that more than one sheet, or the command line, says about a piece.

#include <string>

#include "plan/plan.h"
#include "sheets/kit.h"
#include "sheets/tape.h"

namespace kerfpacket::sheets {

/// "Arch liner", "Wall board".
std::string piece_name(const plan::Piece& piece, const Kit& kit);
/// "Kerfs OUTSIDE the bend: they OPEN".
std::string kerf_side(const plan::Piece& piece, const Kit& kit);
/// "Tick = blade CENTRE".
std::string tick_meaning(const plan::Piece& piece, const Kit& kit);
/// Which end is zero and which edge is the front, in words.
std::string zero_end(const plan::Piece& piece, const Kit& kit);
/// "ok", "CAUTION", "WILL LIKELY BREAK".
std::string verdict_word(bend::Verdict verdict, const Kit& kit);
/// A caution as a sentence, lengths as a hand tape reads them.
std::string caution_text(const plan::Caution& caution, const Kit& kit, measure::Unit unit);
/// "3/4 x 7-1/4 in MDF".
std::string board_text(const plan::Piece& piece, const Kit& kit, const Tape& tape);

}  // namespace kerfpacket::sheets
