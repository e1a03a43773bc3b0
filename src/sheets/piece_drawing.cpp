#include "sheets/piece_drawing.h"

#include "sheets/opening_drawing.h"
#include "sheets/wall_drawing.h"

namespace kerfpacket::sheets {

void draw_piece(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape) {
    if (piece.kind == plan::Kind::arch_liner) draw_opening(pen, space, piece, tape);
    else draw_wall(pen, space, piece, tape);
}

}  // namespace kerfpacket::sheets
