#pragma once
// A curved wall in plan with its dimensions, for the cover.

#include "plan/piece.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// A line of a wall without its tails, which are straight.
Path without_tails(const plan::Piece& piece, const Path& path);

void draw_wall(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape);

}  // namespace kerfpacket::sheets
