#include "bend/coupon.h"

#include <cmath>

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
        case Held::ends: break;
    }
    const double q = coupon.rise / coupon.chord;
    measure::require(q <= most_rise_ratio, "a coupon whose ends are pushed together is bent no further than checked");
    return 1.234 + 0.05 * q + 0.12 * q * q;
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

std::optional<double> closed_hinge_part(const Coupon& coupon, const Cell& cell, double softness) {
    const double lever = tightest_radius(coupon, cell, softness) / close_radius(cell, softness);
    const double part = ((cell.depth + cell.web() * cell.hinge_part) * lever - cell.depth) / cell.web();
    if (part < 0 || part > 1) return std::nullopt;
    return part;
}

}  // namespace kerfpacket::bend
