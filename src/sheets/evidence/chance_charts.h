#pragma once
// Two charts side by side: what table, trials and coupons told of this board's break strain, and what one more coupon
// would tell.

#include "plan/piece.h"
#include "sheets/layout/pen.h"

namespace kerfpacket::sheets {

void draw_chance_charts(Pen& pen, const Rect& space, const plan::Piece& piece);

}  // namespace kerfpacket::sheets
