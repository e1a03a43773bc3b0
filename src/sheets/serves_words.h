#pragma once
// What a revision says of a board that is kerfed already.

#include <string>

#include "plan/piece.h"
#include "sheets/layout/kit.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// "a board kerfed by revision A serves: same kerfs; 1/2 in shorter at its right end, out of the trim", or why it is
/// scrap.
std::string serves_words(const plan::Piece& was, const plan::Piece& now, const Kit& kit, const Tape& tape);

}  // namespace kerfpacket::sheets
