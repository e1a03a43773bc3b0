#pragma once
// A splayed liner in its place, as it is seen from the room.

#include "plan/piece.h"
#include "sheets/layout/pen.h"

namespace kerfpacket::sheets {

/// What is hidden is left out; on the outside its kerfs show.
void draw_splay_in_space(Pen& pen, const Rect& space, const plan::Piece& piece);

}  // namespace kerfpacket::sheets
