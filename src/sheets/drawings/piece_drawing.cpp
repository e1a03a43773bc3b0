#include "sheets/drawings/piece_drawing.h"

#include "sheets/drawings/opening_drawing.h"
#include "sheets/drawings/wall_drawing.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {

void draw_piece(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape) {
    const bool opening = piece.kind == plan::Kind::arch_liner;
    const fonts::Words& words = pen.kit().words;
    const std::string id = measured_id(piece);
    const Scope figure =
        pen.figure(opening ? words("figure.opening", {{"piece", id}, {"shape", shape_name(piece, pen.kit())}})
                           : words("figure.wall", {{"piece", id}}));
    if (opening) draw_opening(pen, space, piece, tape);
    else draw_wall(pen, space, piece, tape);
}

}  // namespace kerfpacket::sheets
