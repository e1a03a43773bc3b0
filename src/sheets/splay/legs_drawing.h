#pragma once
// The legs of a splayed liner: flat boards, both long edges bevelled.

#include "plan/piece.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// One of them from its seen face and, beside it, cut through from above; each as large as its space allows.
void draw_legs(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape);
Length legs_height(const plan::Piece& piece, const fonts::Style& style);

}  // namespace kerfpacket::sheets
