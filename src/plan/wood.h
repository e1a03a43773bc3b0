#pragma once
// What is known of the wood of one board: our table, the user's figures, and what a coupon told.

#include <optional>

#include "plan/piece.h"

namespace kerfpacket::plan {

/// The user's figures where the job has them, else ours; none for a name that nobody knows.
std::optional<bend::Material> material_of(const job::Board& board, const job::Job& job);

/// What coupons and trials make of a material.
struct CouponedWood {
    Wood wood;
    std::optional<CouponResult> coupon;  ///< as in Piece
    std::vector<CouponResult> tried;
};

/// The board's wood; `side` is that of its tightest bend, the one that a coupon is made for. Refuses a coupon or a
/// trial whose figures cannot be.
tl::expected<CouponedWood, job::Diagnostics> wood_of(const job::Board& board, bend::KerfsOn side, const job::Job& job);

}  // namespace kerfpacket::plan
