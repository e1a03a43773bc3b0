#include "sheets/words/wall_side.h"

namespace kerfpacket::sheets {

std::string wall_side_text(const plan::Piece& piece, const plan::CasingSegment& segment, const Kit& kit) {
    if (!piece.splay && piece.casing->wall_side == job::WallSide::room) return {};
    return kit.words(segment.side == job::Toward::room ? "casing.side_room" : "casing.side_away");
}

}  // namespace kerfpacket::sheets
