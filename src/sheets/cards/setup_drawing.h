#pragma once
// The two full-size drawings of the set-up card.

#include "plan/plan.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// Height that the end view takes.
Length end_view_height(const plan::Piece& piece, const fonts::Style& style);
/// The board at the fence, end view, full size: spacer, groove, web. `top` is the height it hangs from.
void draw_end_view(Pen& pen, const plan::Plan& plan, const plan::Piece& piece, const Tape& tape, Length top);

/// A piece of the board seen on its edge, its kerf face up: as many whole grooves as there is room for.
void draw_grooves(Pen& pen, const plan::Piece& piece, const Rect& board);

Length edge_view_height(const plan::Piece& piece, const fonts::Style& style);
/// Some grooves seen on the board's edge, full size.
void draw_edge_view(Pen& pen, const plan::Piece& piece, const Tape& tape, Length top);

}  // namespace kerfpacket::sheets
