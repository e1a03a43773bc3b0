#include "bend/coupon.h"

#include <algorithm>
#include <cmath>

#include "bend/section.h"
#include "measure/require.h"

namespace kerfpacket::bend {
namespace {

/// c^2 + 4 m^2, in mm^2.
double squares(const Coupon& coupon) {
    const double c = coupon.chord.mm();
    const double m = coupon.rise.mm();
    return c * c + 4 * m * m;
}

}  // namespace

double middle_factor(const Coupon& coupon) {
    switch (coupon.held) {
        case Held::disc: return 1;
        case Held::centre: return 1.5;
        case Held::one_kerf: throw measure::Bug("a board with one kerf is no even bend");
        case Held::ends: break;
    }
    const double q = coupon.rise / coupon.chord;
    measure::require(q <= most_rise_ratio, "a coupon whose ends are pushed together is bent no further than checked");
    return 1.234 + 0.05 * q + 0.12 * q * q;
}

double kerfs_at_most(const Coupon& coupon, Length spacing) {
    const double kerfs = coupon.chord / spacing;
    switch (coupon.held) {
        case Held::disc: return std::max(1.0, kerfs);
        case Held::ends: return std::max(1.0, kerfs / 5);
        case Held::centre:
        case Held::one_kerf: break;
    }
    return 1;
}

Length circle_radius(const Coupon& coupon) {
    measure::require(coupon.rise.mm() > 0, "a coupon that was bent has a rise");
    return Length::mm(squares(coupon) / (8 * coupon.rise.mm()));
}

Length tightest_radius(const Coupon& coupon, const Cell& cell, double softness) {
    const Length below_face = length_keeping_depth(cell, softness);
    const Length circle = circle_radius(coupon) + (coupon.side == KerfsOn::outside ? below_face : -below_face);
    return circle / middle_factor(coupon);
}

double coupon_strain(const Coupon& coupon, const Cell& cell, double softness) {
    return web_strain(cell, softness, tightest_radius(coupon, cell, softness));
}

double coupon_error(const Coupon& coupon, Length rise_error, Length chord_error) {
    const double c = coupon.chord.mm();
    const double m = coupon.rise.mm();
    return std::abs(1 / m - 8 * m / squares(coupon)) * rise_error.mm() + 2 * c / squares(coupon) * chord_error.mm();
}

Angle lone_kerf_turn(const Coupon& coupon, const Cell& cell, double softness) {
    Cell alone = cell;
    alone.spacing = cell.thickness * 100;
    const Length hinge = hinge_length(alone, softness) * (1 / web_section(cell).stiffness - 1);
    const double whole = std::atan(coupon.rise / coupon.chord);
    return Angle::radians(whole / (1 + coupon.chord / 3 / hinge));
}

std::optional<double> lone_hinge_part(const Coupon& coupon, const Cell& cell, double softness) {
    const Length lever = cell.kerf / (2 * std::tan(lone_kerf_turn(coupon, cell, softness).radians() / 2));
    const Length height = lever - cell.depth;
    const Length doubt = lever * (coupon_reading / coupon.rise + coupon_reading / coupon.chord);
    if (height < -doubt || height > cell.web() + doubt) return std::nullopt;
    return cell.hinge_part + (std::clamp(height, Length(), cell.web()) - hinge_height(cell)) / cell.web();
}

std::optional<double> closed_hinge_part(const Coupon& coupon, const Cell& cell, double softness) {
    const double lever = tightest_radius(coupon, cell, softness) / close_radius(cell, softness);
    const Length height = (cell.depth + hinge_height(cell)) * lever - cell.depth;
    if (height < Length() || height > cell.web()) return std::nullopt;
    return cell.hinge_part + (height - hinge_height(cell)) / cell.web();
}

}  // namespace kerfpacket::bend
