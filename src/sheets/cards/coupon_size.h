#pragma once
// How a coupon of this board is cut: where its figures come from when spacing or bend vary along the piece.

#include <string>

#include "plan/piece.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// That a record is made of.
inline constexpr int coupons_of_board = 3;

struct CouponSize {
    Length length;   ///< whole inches or centimetres
    Length rise;     ///< that a coupon must reach to be measured well
    Length spacing;  ///< at the kerf that governs
    int kerfs = 0;
    bool for_radius = false;  ///< longer than usual, so that at the piece's radius it has that rise
    bend::KerfsOn side = bend::KerfsOn::outside;
};

/// A foot long, or as long as it takes to have a rise of 1 in (25 mm) at the piece's radius.
CouponSize coupon_size(const plan::Piece& piece, Unit unit);

/// The test of one kerf on a scrap that is as long as the coupon and takes its ticks: which is cut, at which the scrap is
/// raised, and how far that one stands from the kerf.
struct OneKerf {
    int kerf = 0;
    int raised = 0;
    Length away;
};
/// What is clamped is long enough for a clamp; raised is about a foot away, to a hundredth of an inch or half a
/// millimetre.
OneKerf one_kerf_test(const plan::Piece& piece, const CouponSize& size, Unit unit);

/// The coupon as a board that gets strips: its kerfs alike, numbered from zero at the same end as the piece's, as far
/// from one end as from the other; no trim. `name` stands for the piece's on them.
plan::Piece coupon_board(const plan::Piece& piece, const CouponSize& size, std::string name);

}  // namespace kerfpacket::sheets
