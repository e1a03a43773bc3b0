#pragma once
// The dimensioned drawing of a piece for the cover, as large as its space allows; not to scale for measuring.

#include "plan/piece.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// An opening in elevation, or a wall in plan with the room below it, wholly inside `space`.
void draw_piece(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape);

}  // namespace kerfpacket::sheets
