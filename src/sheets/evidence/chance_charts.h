#pragma once
// Two charts side by side: what table, trials and coupons told of this board's break strain, and what one more coupon
// would tell.

#include "plan/piece.h"
#include "sheets/layout/pen.h"

namespace kerfpacket::sheets {

void draw_chance_charts(Pen& pen, const Rect& space, const plan::Piece& piece);

/// "A coupon that breaks at 0.72 % or more makes this ok; one under 0.59 % asks for another cut."
std::string next_coupon_sentence(const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
