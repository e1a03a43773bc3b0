#pragma once
// An arched opening in elevation with its dimensions, for the cover.

#include "plan/piece.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

void draw_opening(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape);

}  // namespace kerfpacket::sheets
