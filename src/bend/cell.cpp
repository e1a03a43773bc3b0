#include "bend/cell.h"

#include <algorithm>
#include <cmath>

#include "bend/moulded.h"
#include "bend/section.h"
#include "bend/yield.h"
#include "measure/require.h"

namespace kerfpacket::bend {
namespace {

// Constants of the fit to the finite-element rows (tests/handbook).
constexpr double reach_factor = 1.28;
constexpr double reach_power = 2.67;
constexpr double blend_power = 1.85;

double web_ratio(const Cell& cell) {
    return cell.plain() ? cell.web() / cell.thickness : std::cbrt(web_section(cell).stiffness);
}

Length reach(const Cell& cell, double web, double softness) {
    const Length thick = cell.plain() ? cell.web() : cell.thickness * web;
    return reach_factor * thick * (1 - std::pow(web, reach_power)) * softness;
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

LoneKerf::LoneKerf(const Cell& cell, double softness)
    : web(web_ratio(cell)), reach(bend::reach(cell, web, softness)), reach_raised(std::pow(reach.mm(), blend_power)) {}

Yield::Yield(const Cell& cell, double softness, const LoneKerf& lone)
    : cell_(cell), softness_(softness), web_(lone.web), reach_(lone.reach) {
    measure::require(cell.depth.mm() > 0 && cell.thinnest_web().mm() > 0, "a kerf leaves a web");
    measure::require(cell.kerf.mm() > 0 && land().mm() > 0, "kerfs leave land between them");
    const double b = reach_.mm();
    const double x = land().mm();
    const double both = lone.reach_raised + std::pow(x, blend_power);
    blended_ = std::pow(both, 1 / blend_power);
    in_blended_ = lone.reach_raised / both;
    hinge_ = cell.kerf + Length::mm(b * x / blended_);
    stiffness_ = 1 / (1 + hinge_ / cell.spacing * (1 / (web_ * web_ * web_) - 1));
}

Length Yield::least_radius(double allowed) const {
    if (!cell_.profile.empty()) {
        const auto places = moulded_places(cell_, softness_);
        return Length::mm(std::max(places.front().strain, places.back().strain) / allowed);
    }
    if (!cell_.plies.empty()) {
        const Section web = web_section(cell_);
        return web.extreme * (stiffness_ / (web.stiffness * allowed));
    }
    return cell_.thickness * (stiffness_ / (2 * web_ * web_ * allowed));
}

double Yield::peel_margin() const {
    // Finite elements, kerf by kerf a little wider: 1 to 2 % over where this begins, then 12, 33 and 90 % at a land of
    // 0.3, 0.18 and 0.06 of the reach, whatever the board and its cut.
    constexpr double begins = 0.42;
    constexpr double rise = 0.43;
    constexpr double power = 0.6;
    const double short_land = land() / reach_;
    return short_land < begins ? 1 + rise * (std::pow(begins / short_land, power) - 1) : 1;
}

double Yield::peel_strain(const Material& material) const {
    measure::require(material.peel.has_value(), "peel is asked of a material that has figures for it");
    if (!cell_.profile.empty()) return moulded_peel(cell_, material);
    // What the hinge gains as the reach grows.
    const double energy_share = 1 - in_blended_ * (reach_.mm() / blended_);
    // A web of plies releases what one of one stuff would that is as stiff and strained alike: 4 y^2 in place of t^2.
    const double lever = cell_.plies.empty() ? 1 : 2 * (web_section(cell_).extreme / cell_.thickness) / web_;
    const double web_m = (cell_.plies.empty() ? cell_.web() : cell_.thickness * web_).mm() / 1000 / (lever * lever);
    const double modulus_pa = material.peel->modulus_mpa * 1e6;
    const double released = modulus_pa * web_m * (1 - web_ * web_ * web_) * energy_share;
    return std::sqrt(6 * material.peel->fracture_energy_j_m2 / released) / peel_margin();
}

double Yield::break_strain(const Material& material, KerfsOn side) const {
    if (side == KerfsOn::inside) return material.break_strain_inside;
    if (!material.peel) return material.break_strain_outside;
    return std::min(material.break_strain_outside, peel_strain(material));
}

Length Yield::length_keeping_depth() const {
    if (cell_.plain()) return cell_.web() / 2 + cell_.depth / 2 * shift();
    const Section web = web_section(cell_);
    return web.neutral + (web.whole - web.neutral) * shift();
}

Length Yield::close_radius() const {
    return cell_.spacing * ((1 - shift()) * ((cell_.depth + hinge_height(cell_)) / cell_.kerf));
}

Length Yield::facet(Length radius) const { return cell_.spacing * (stiff_share() * (cell_.spacing / (8 * radius))); }

Length hinge_length(const Cell& cell, double softness) { return Yield(cell, softness).hinge_length(); }

double stiffness_ratio(const Cell& cell, double softness) { return Yield(cell, softness).stiffness_ratio(); }

double web_strain(const Cell& cell, double softness, Length radius) { return Yield(cell, softness).web_strain(radius); }

Length least_radius(const Cell& cell, double softness, double allowed) {
    return Yield(cell, softness).least_radius(allowed);
}

double peel_margin(const Cell& cell, double softness) { return Yield(cell, softness).peel_margin(); }

double peel_strain(const Cell& cell, const Material& material) {
    return Yield(cell, material.softness).peel_strain(material);
}

double break_strain(const Cell& cell, const Material& material, KerfsOn side) {
    if (side == KerfsOn::inside) return material.break_strain_inside;
    if (!material.peel) return material.break_strain_outside;
    return Yield(cell, material.softness).break_strain(material, side);
}

Length length_keeping_depth(const Cell& cell, double softness) { return Yield(cell, softness).length_keeping_depth(); }

Length hinge_height(const Cell& cell) {
    if (cell.plain()) return cell.web() * cell.hinge_part;
    const Length middle = cell.web() - web_section(cell).neutral;
    return std::clamp(middle + cell.web() * (cell.hinge_part - 0.5), Length(), cell.web());
}

Angle closing_angle(const Cell& cell) {
    return Angle::radians(2 * std::atan(cell.kerf / (2 * (cell.depth + hinge_height(cell)))));
}

Length close_radius(const Cell& cell, double softness) { return Yield(cell, softness).close_radius(); }

Length hinge_radius(const Cell& cell, KerfsOn side, Length plain_radius) {
    const Length below_face = cell.web() - hinge_height(cell);
    return side == KerfsOn::inside ? plain_radius - below_face : plain_radius + below_face;
}

Length opened_mouth(const Cell& cell, Angle turn) {
    return cell.kerf + 2 * (cell.depth + hinge_height(cell)) * std::tan(turn.radians() / 2);
}

Length facet(const Cell& cell, double softness, Length radius) { return Yield(cell, softness).facet(radius); }

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
