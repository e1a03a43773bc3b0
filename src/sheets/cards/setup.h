#pragma once
// The set-up card of one piece: depth, web, kerf, spacer, full-size drawings, checks, coupon.

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

void add_setup_card(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
