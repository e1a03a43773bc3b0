#pragma once
// What a coupon tells: a piece of the same board, kerfed like the blank and bent until something stopped it.

#include <optional>

#include "bend/cell.h"

namespace kerfpacket::bend {

/// How a coupon was held: round a disc, its ends pushed together, or pushed at the middle.
enum class Held { disc, ends, centre };

struct Coupon {
    Length chord;  ///< c, measured on the plain face
    Length rise;   ///< m, the mid-ordinate
    Held held = Held::disc;
    KerfsOn side = KerfsOn::outside;
};

/// Curvature in the middle over that of the circle through ends and middle. Source: design notes, "Choosing depth and
/// spacing"; the ends-pushed formula holds for a rise up to 0.84 of the chord.
double middle_factor(const Coupon& coupon);
inline constexpr double most_rise_ratio = 0.84;

/// Radius of the circle through ends and middle: (c^2 + 4 m^2)/(8 m), of the plain face.
Length circle_radius(const Coupon& coupon);

/// Radius of the length-keeping line where the coupon was bent most.
Length tightest_radius(const Coupon& coupon, const Cell& cell, double softness);

/// Nominal strain in the web where the coupon was bent most.
double coupon_strain(const Coupon& coupon, const Cell& cell, double softness);

/// Relative error of that strain when the rise is read wrong by `rise_error` and the chord by `chord_error`, both at
/// worst: |1/m - 8m/(c^2+4m^2)| dm + 2c/(c^2+4m^2) dc. Source: design notes, "Coupon".
double coupon_error(const Coupon& coupon, Length rise_error, Length chord_error);
/// What a tape is trusted to.
inline constexpr Length coupon_reading = Length::inches(1.0 / 16);

/// Height of the hinge over the web (Cell::hinge_part) in a coupon whose kerfs closed: that with which `close_radius`
/// gives the radius at which they did. The lift test's k/th - d, th = s/R, leaves out that the land bends too, and
/// would let the kerfs close later than the coupon's. None where the figures put the hinge outside the web: they were
/// measured wrong.
std::optional<double> closed_hinge_part(const Coupon& coupon, const Cell& cell, double softness);

}  // namespace kerfpacket::bend
