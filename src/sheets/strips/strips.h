#pragma once
// The mark strips of one piece, for the face of the board.

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

/// Strips of boards alike follow each other where that takes fewer sheets than a set of sheets for each. With a coupon
/// its strips come before them.
void add_strips(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit,
                const plan::Piece* coupon = nullptr);

/// Whether a coupon's strips can stand before those of its piece, and take fewer sheets there than apart.
bool coupon_with_strips(const plan::Plan& plan, const plan::Piece& piece, const plan::Piece& coupon, const Kit& kit);

/// The marks of a coupon at full size, on further pages of its record: on the paper of the strips, or on that of the
/// cards where strips are printed on a roll. `coupon` is the piece's coupon as a board: see coupon_board. Returns how
/// far down the last page is filled.
Length add_coupon_strips(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const plan::Piece& coupon,
                         const Kit& kit);

}  // namespace kerfpacket::sheets
