#pragma once
// Which side of its wall a casing segment is for, in words.

#include <string>

#include "plan/piece.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::sheets {

/// "FAR SIDE of the wall"; nothing where a casing stands at the room's side alone of a jamb square to its wall.
std::string wall_side_text(const plan::Piece& piece, const plan::CasingSegment& segment, const Kit& kit);

}  // namespace kerfpacket::sheets
