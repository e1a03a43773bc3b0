#pragma once
// What is known of the wood of one board: our table, the user's figures, and what a coupon told.

#include <optional>

#include <tl/expected.hpp>

#include "bend/chance.h"
#include "bend/material.h"
#include "job/job.h"
#include "plan/tried.h"

namespace kerfpacket::plan {

using measure::Angle;

/// Figures of the wood: of the table, the user's, or with what a coupon told.
struct Wood {
    bend::Material material;    ///< with the weakest coupon's limits
    double hinge_part = 0.5;    ///< as in bend::Cell
    bend::Material table;       ///< without any coupon
    bend::Knowledge known;      ///< of all coupons and trials, against the table
    bend::Knowledge by_trials;  ///< of the trials alone
};
/// Wood of which no coupon was bent.
inline Wood untried(const bend::Material& material) {
    return {material, 0.5, material, bend::Knowledge(material.scatter), bend::Knowledge(material.scatter)};
}

/// The user's figures where the job has them, else ours; none for a name that nobody knows.
std::optional<bend::Material> material_of(const job::Board& board, const job::Job& job);

/// What coupons and trials make of a material.
struct CouponedWood {
    Wood wood;
    std::optional<CouponResult> coupon;  ///< as in Piece
    std::vector<CouponResult> tried;
};

/// The board's wood; `side` is that of its tightest bend, the one that a coupon is made for, `across` the angle at
/// which the bend crosses the grain. Refuses a coupon or a trial whose figures cannot be.
tl::expected<CouponedWood, job::Diagnostics> wood_of(const job::Board& board, bend::KerfsOn side, Angle across,
                                                     const job::Job& job);

}  // namespace kerfpacket::plan
