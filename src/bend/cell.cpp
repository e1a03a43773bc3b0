#include "bend/cell.h"

#include <algorithm>
#include <cmath>

#include "bend/moulded.h"
#include "bend/section.h"
#include "measure/require.h"

namespace kerfpacket::bend {
namespace {

// Constants of the fit to the finite-element rows (tests/handbook).
constexpr double reach_factor = 1.28;
constexpr double reach_power = 2.67;
constexpr double blend_power = 1.85;

/// x: the uncut land between two kerfs.
Length land(const Cell& cell) { return cell.spacing - cell.kerf; }

/// t/T, or what gives a flat board of one stuff a web as stiff as that of these plies, or of this profile.
double web_ratio(const Cell& cell) {
    return cell.plain() ? cell.web() / cell.thickness : std::cbrt(web_section(cell).stiffness);
}

/// b: how far the bend of a lone kerf reaches into the uncut parts.
Length reach(const Cell& cell, double softness) {
    const Length web = cell.plain() ? cell.web() : cell.thickness * web_ratio(cell);
    return reach_factor * web * (1 - std::pow(web_ratio(cell), reach_power)) * softness;
}

/// f: how far the length-keeping line moves from the middle of the web toward the middle of the board.
double shift(const Cell& cell, double softness) {
    return (1 - hinge_length(cell, softness) / cell.spacing) * stiffness_ratio(cell, softness);
}

/// The strain where a moulded board is strained most, at which the place that peels first does.
double moulded_peel(const Cell& cell, const Material& material) {
    double strain = 0;
    double used = 0;
    for (const MouldedPlace& place : moulded_places(cell, material.softness)) {
        strain = std::max(strain, place.strain);
        used = std::max(used, peel_use(place, cell, material));
    }
    return strain / used;
}

}  // namespace

Length Cell::thinnest() const {
    Length least = thickness;
    for (const ProfilePoint& point : profile) least = std::min(least, point.thickness);
    return least;
}

Length hinge_length(const Cell& cell, double softness) {
    measure::require(cell.depth.mm() > 0 && cell.thinnest_web().mm() > 0, "a kerf leaves a web");
    measure::require(cell.kerf.mm() > 0 && land(cell).mm() > 0, "kerfs leave land between them");
    const double b = reach(cell, softness).mm();
    const double x = land(cell).mm();
    const double blended = std::pow(std::pow(b, blend_power) + std::pow(x, blend_power), 1 / blend_power);
    return cell.kerf + Length::mm(b * x / blended);
}

double stiffness_ratio(const Cell& cell, double softness) {
    const double hinge_share = hinge_length(cell, softness) / cell.spacing;
    return 1 / (1 + hinge_share * (std::pow(web_ratio(cell), -3) - 1));
}

double web_strain(const Cell& cell, double softness, Length radius) { return least_radius(cell, softness, 1) / radius; }

Length least_radius(const Cell& cell, double softness, double allowed) {
    const double ratio = stiffness_ratio(cell, softness);
    if (!cell.profile.empty()) {
        const auto places = moulded_places(cell, softness);
        return Length::mm(std::max(places.front().strain, places.back().strain) / allowed);
    }
    if (!cell.plies.empty()) {
        const Section web = web_section(cell);
        return web.extreme * (ratio / (web.stiffness * allowed));
    }
    const double web = web_ratio(cell);
    return cell.thickness * (ratio / (2 * web * web * allowed));
}

double peel_margin(const Cell& cell, double softness) {
    // Finite elements, kerf by kerf a little wider: 1 to 2 % over where this begins, then 12, 33 and 90 % at a land of
    // 0.3, 0.18 and 0.06 of the reach, whatever the board and its cut.
    constexpr double begins = 0.42;
    constexpr double rise = 0.43;
    constexpr double power = 0.6;
    const double short_land = land(cell) / reach(cell, softness);
    return short_land < begins ? 1 + rise * (std::pow(begins / short_land, power) - 1) : 1;
}

double peel_strain(const Cell& cell, const Material& material) {
    measure::require(material.peel.has_value(), "peel is asked of a material that has figures for it");
    if (!cell.profile.empty()) return moulded_peel(cell, material);
    const double b = reach(cell, material.softness).mm();
    const double x = land(cell).mm();
    const double energy_share =
        1 - std::pow(b, blend_power + 1) /
                std::pow(std::pow(b, blend_power) + std::pow(x, blend_power), (blend_power + 1) / blend_power);
    // A web of plies releases what one of one stuff would that is as stiff and strained alike: 4 y^2 in place of t^2.
    const double share = web_ratio(cell);
    const double lever = cell.plies.empty() ? 1 : 2 * (web_section(cell).extreme / cell.thickness) / share;
    const double web_m = (cell.plies.empty() ? cell.web() : cell.thickness * share).mm() / 1000 / (lever * lever);
    const double modulus_pa = material.peel->modulus_mpa * 1e6;
    const double released = modulus_pa * web_m * (1 - std::pow(web_ratio(cell), 3)) * energy_share;
    return std::sqrt(6 * material.peel->fracture_energy_j_m2 / released) / peel_margin(cell, material.softness);
}

double break_strain(const Cell& cell, const Material& material, KerfsOn side) {
    if (side == KerfsOn::inside) return material.break_strain_inside;
    if (!material.peel) return material.break_strain_outside;
    return std::min(material.break_strain_outside, peel_strain(cell, material));
}

Length length_keeping_depth(const Cell& cell, double softness) {
    if (cell.plain()) return cell.web() / 2 + cell.depth / 2 * shift(cell, softness);
    const Section web = web_section(cell);
    return web.neutral + (web.whole - web.neutral) * shift(cell, softness);
}

Length hinge_height(const Cell& cell) {
    if (cell.plain()) return cell.web() * cell.hinge_part;
    const Length middle = cell.web() - web_section(cell).neutral;
    return std::clamp(middle + cell.web() * (cell.hinge_part - 0.5), Length(), cell.web());
}

Angle closing_angle(const Cell& cell) {
    return Angle::radians(2 * std::atan(cell.kerf / (2 * (cell.depth + hinge_height(cell)))));
}

Length close_radius(const Cell& cell, double softness) {
    return cell.spacing * ((1 - shift(cell, softness)) * ((cell.depth + hinge_height(cell)) / cell.kerf));
}

Length hinge_radius(const Cell& cell, KerfsOn side, Length plain_radius) {
    const Length below_face = cell.web() - hinge_height(cell);
    return side == KerfsOn::inside ? plain_radius - below_face : plain_radius + below_face;
}

Length opened_mouth(const Cell& cell, Angle turn) {
    return cell.kerf + 2 * (cell.depth + hinge_height(cell)) * std::tan(turn.radians() / 2);
}

Length facet(const Cell& cell, double softness, Length radius) {
    const double stiff_share = 1 - hinge_length(cell, softness) / cell.spacing;
    return cell.spacing * (stiff_share * (cell.spacing / (8 * radius)));
}

Range checked_range(const Cell& cell) {
    const auto within = [](double ratio, double low, double high) { return low <= ratio && ratio <= high; };
    Range range{true, true, true, cell.kerf <= 0.85 * cell.spacing};
    // Of a moulded board at its thickest and its thinnest: what lies between is within as well.
    for (const Length thickness : {cell.thickness, cell.thinnest()}) {
        range.depth = range.depth && within(cell.depth / thickness, 0.3, 0.9);
        range.kerf = range.kerf && within(cell.kerf / thickness, 0.08, 0.5);
        range.spacing = range.spacing && within(cell.spacing / thickness, 0.2, 4);
    }
    return range;
}

}  // namespace kerfpacket::bend
