#pragma once
// The coupon record of one piece: how to make, bend and measure coupons, room to write, where the result goes.

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

void add_coupon_sheet(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
