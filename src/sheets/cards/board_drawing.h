#pragma once
// A board for its work order: its section and the cuts of its ends, not to scale.

#include "plan/piece.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

Length board_drawing_height(const fonts::Style& style);
/// From the upper edge of the space down, as wide as it.
void draw_board(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape);

}  // namespace kerfpacket::sheets
