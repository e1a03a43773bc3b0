#pragma once
// The set-up card of one piece: depth, web, kerf, spacer, full-size drawings, checks, coupon.

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

void add_setup_card(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit);

/// Whether the card says what small errors do: not where that takes it to a further page. There the strain sheet does.
bool errors_on_setup_card(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
