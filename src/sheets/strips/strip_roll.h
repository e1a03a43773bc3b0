#pragma once
// Strips along a roll: as many side by side as it is wide, their pages as long as what stands on them.

#include "sheets/layout/draft.h"
#include "sheets/strips/strip_drawing.h"

namespace kerfpacket::sheets {

/// Pages are at most this long: the most that a PDF's page may be. Source: ISO 32000-1, annex C.2.
inline constexpr Length longest_page = Length::points(14400);

/// With a coupon its strips come first.
void add_roll_strips(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit,
                     const plan::Piece* coupon = nullptr);

/// Whether the one page that holds all strips of the piece has room beside them for its coupon's.
bool roll_holds_coupon(const plan::Plan& plan, const plan::Piece& piece, const plan::Piece& coupon, const Kit& kit);

}  // namespace kerfpacket::sheets
