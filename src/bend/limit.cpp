#include "bend/limit.h"

#include <algorithm>
#include <cmath>

#include "bend/yield.h"

namespace kerfpacket::bend {
namespace {

/// What is left for a bend that comes out tighter than drawn. Judgement: src/bend/NOTES.md.
constexpr double usual_margin = 0.85;

}  // namespace

double closing_margin(const Cell& cell) {
    // By how much kerfs may close at a larger radius than calculated: 16, 10, 6, 2 and 0 % at d/T 0.3 to 0.7 by finite
    // elements, whose curve this covers. The land of a shallow kerf bends too, which the hinge leaves out.
    constexpr double shallow = 0.3;
    constexpr double shallow_error = 0.19;
    constexpr double deep = 0.7;
    const double depth = std::clamp(cell.depth / cell.thickness, shallow, deep);
    return usual_margin / (1 + shallow_error * std::pow((deep - depth) / (deep - shallow), 1.5));
}

Tightest tightest(const Cell& cell, const Material& material, KerfsOn side, Verdict no_worse) {
    return tightest(Yield(cell, material.softness), material, side, no_worse);
}

Tightest tightest(const Yield& yield, const Material& material, KerfsOn side, Verdict no_worse) {
    const bool ok = no_worse == Verdict::ok;
    const double limit = yield.break_strain(material, side);
    const bool peels = side == KerfsOn::outside && material.peel && limit < material.break_strain_outside;
    Tightest tightest{yield.least_radius((ok ? ok_up_to : caution_up_to) * limit), peels ? Limit::peel : Limit::strain};
    const auto take = [&](Length radius, Limit what) {
        if (radius > tightest.radius) tightest = {radius, what};
    };
    if (side == KerfsOn::inside) take(yield.close_radius() / (ok ? closing_margin(yield.cell()) : 1), Limit::closing);
    // The radius under which the facet on the plain face is deeper than the limit.
    if (ok) take(yield.facet(facet_limit), Limit::facet);
    return tightest;
}

Length plain_radius(const Cell& cell, const Material& material, KerfsOn side, Length line_radius) {
    const Length below_face = length_keeping_depth(cell, material.softness);
    return side == KerfsOn::outside ? line_radius - below_face : line_radius + below_face;
}

}  // namespace kerfpacket::bend
