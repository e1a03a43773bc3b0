#pragma once
// The coupon record of one piece: how to make, bend and measure coupons, room to write, where the result goes.

#include <optional>

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

/// Its strips follow it, or stand elsewhere: see coupon_with_strips.
void add_coupon_sheet(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit,
                      bool strips_elsewhere = false);

/// The board that the coupon's strips are of; nothing where the test of one kerf stands with them.
std::optional<plan::Piece> coupon_alone(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
