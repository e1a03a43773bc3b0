#include "bend/cell.h"

#include <algorithm>
#include <cmath>

#include "measure/require.h"

namespace kerfpacket::bend {
namespace {

// Constants of the fit to the finite-element rows (tests/handbook).
constexpr double reach_factor = 1.28;
constexpr double reach_power = 2.67;
constexpr double blend_power = 1.85;

/// x: the uncut land between two kerfs.
Length land(const Cell& cell) { return cell.spacing - cell.kerf; }

double web_ratio(const Cell& cell) { return cell.web() / cell.thickness; }

/// b: how far the bend of a lone kerf reaches into the uncut parts.
Length reach(const Cell& cell, double softness) {
    return reach_factor * cell.web() * (1 - std::pow(web_ratio(cell), reach_power)) * softness;
}

/// f: how far the length-keeping line moves from the middle of the web toward the middle of the board.
double shift(const Cell& cell, double softness) {
    return (1 - hinge_length(cell, softness) / cell.spacing) * stiffness_ratio(cell, softness);
}

/// Height of the hinge above the kerf's bottom: the middle of the web, unless a coupon that closed measured it.
Length hinge_height(const Cell& cell) { return cell.web() * cell.hinge_part; }

}  // namespace

Length hinge_length(const Cell& cell, double softness) {
    measure::require(cell.depth.mm() > 0 && cell.web().mm() > 0, "a kerf leaves a web");
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
    const double web = web_ratio(cell);
    return cell.thickness * (stiffness_ratio(cell, softness) / (2 * web * web * allowed));
}

double peel_strain(const Cell& cell, const Material& material) {
    measure::require(material.peel.has_value(), "peel is asked of a material that has figures for it");
    const double b = reach(cell, material.softness).mm();
    const double x = land(cell).mm();
    const double energy_share =
        1 - std::pow(b, blend_power + 1) /
                std::pow(std::pow(b, blend_power) + std::pow(x, blend_power), (blend_power + 1) / blend_power);
    const double web_m = cell.web().mm() / 1000;
    const double modulus_pa = material.peel->modulus_mpa * 1e6;
    const double released = modulus_pa * web_m * (1 - std::pow(web_ratio(cell), 3)) * energy_share;
    return std::sqrt(6 * material.peel->fracture_energy_j_m2 / released);
}

double break_strain(const Cell& cell, const Material& material, KerfsOn side) {
    if (side == KerfsOn::inside) return material.break_strain_inside;
    if (!material.peel) return material.break_strain_outside;
    return std::min(material.break_strain_outside, peel_strain(cell, material));
}

Length length_keeping_depth(const Cell& cell, double softness) {
    return cell.web() / 2 + cell.depth / 2 * shift(cell, softness);
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
    return {within(cell.depth / cell.thickness, 0.3, 0.9), within(cell.kerf / cell.thickness, 0.08, 0.5),
            within(cell.spacing / cell.thickness, 0.2, 4), cell.kerf <= 0.85 * cell.spacing};
}

}  // namespace kerfpacket::bend
