#pragma once
// A board that climbs: its angle and lengths, the wall in plan, the board in space, unrolled, and as it lies at the
// saw.

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

void add_climb_sheet(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
