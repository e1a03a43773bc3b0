#pragma once
// What a coupon tells: a piece of the same board, kerfed like the blank and bent until something stopped it.

#include <optional>

#include "bend/cell.h"

namespace kerfpacket::bend {

/// How a coupon was held: round a disc, its ends pushed together, or pushed at the middle; or clamped beside its only
/// kerf and raised until that closed, `chord` from it.
enum class Held { disc, ends, centre, one_kerf };

struct Coupon {
    Length chord;  ///< c, measured on the plain face
    Length rise;   ///< m, the mid-ordinate
    Held held = Held::disc;
    KerfsOn side = KerfsOn::outside;
};

/// Curvature in the middle over that of the circle through ends and middle. Source: src/bend/NOTES.md,
/// "A coupon's bend"; the ends-pushed formula holds for a rise up to 0.84 of the chord.
double middle_factor(const Coupon& coupon);
inline constexpr double most_rise_ratio = 0.84;

/// How many kerfs a coupon bends about as far as the one that breaks: all on a disc, a fifth with its ends pushed
/// together, one pushed at the middle. At least 1. Worked out from the shape of the bend: within a twentieth of the
/// most.
double kerfs_at_most(const Coupon& coupon, Length spacing);

/// Radius of the circle through ends and middle: (c^2 + 4 m^2)/(8 m), of the plain face.
Length circle_radius(const Coupon& coupon);

/// Radius of the length-keeping line where the coupon was bent most.
Length tightest_radius(const Coupon& coupon, const Cell& cell, double softness);

/// Nominal strain in the web where the coupon was bent most.
double coupon_strain(const Coupon& coupon, const Cell& cell, double softness);

/// Relative error of that strain when the rise is read wrong by `rise_error` and the chord by `chord_error`, both at
/// worst: |1/m - 8m/(c^2+4m^2)| dm + 2c/(c^2+4m^2) dc. By differentiating
/// the radius of the circle.
double coupon_error(const Coupon& coupon, Length rise_error, Length chord_error);
/// What a tape is trusted to.
inline constexpr Length coupon_reading = Length::inches(1.0 / 16);

/// The turn of a lone kerf whose board is raised by the coupon's rise at its chord: what is left when the bend of the
/// uncut part is taken off. Raised at its end by a force, a board of length c rises by M c^2/(3 EI), while the kerf
/// adds a turn of M L (1/EI_web - 1/EI). Source: beam theory, with the hinge length of one kerf far from others.
Angle lone_kerf_turn(const Coupon& coupon, const Cell& cell, double softness);

/// Height of the hinge over the web in a board whose lone kerf closed: k/(2 tan(th/2)) - d. None where the figures put
/// it further outside the web than the tape's error does.
std::optional<double> lone_hinge_part(const Coupon& coupon, const Cell& cell, double softness);

/// Height of the hinge over the web (Cell::hinge_part) in a coupon whose kerfs closed: that with which `close_radius`
/// gives the radius at which they did. The lift test's k/th - d, th = s/R, leaves out that the land bends too, and
/// would let the kerfs close later than the coupon's. None where the figures put the hinge outside the web: they were
/// measured wrong.
std::optional<double> closed_hinge_part(const Coupon& coupon, const Cell& cell, double softness);

}  // namespace kerfpacket::bend
