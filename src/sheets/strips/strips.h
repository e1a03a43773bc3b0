#pragma once
// The mark strips of one piece, for the face of the board.

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

void add_strips(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
