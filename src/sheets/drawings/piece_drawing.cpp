#include "sheets/drawings/piece_drawing.h"

#include "sheets/drawings/opening_drawing.h"
#include "sheets/drawings/wall_drawing.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {

void draw_piece(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape) {
    const bool opening = piece.kind == plan::Kind::arch_liner;
    const fonts::Words& words = pen.kit().words;
    const std::string id = measured_id(piece);
    const std::string span = tape.exact(piece.measured_span);
    const std::string rise = tape.exact(piece.measured_rise);
    const Scope figure = pen.figure(
        opening
            ? words("figure.opening",
                    {{"piece", id}, {"shape", shape_name(piece, pen.kit())}, {"span", span}, {"rise", rise}})
            : words("figure.wall",
                    {{"piece", id}, {"chord", span}, {"rise", rise}, {"radius", tape.with_unit(piece.radii.wall)}}));
    if (opening) draw_opening(pen, space, piece, tape);
    else draw_wall(pen, space, piece, tape);
}

}  // namespace kerfpacket::sheets
