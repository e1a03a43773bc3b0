#include "bend/material.h"

#include <algorithm>
#include <cmath>

namespace kerfpacket::bend {
namespace {

/// Factor on the break strain where grain can split as the kerfs open. Judgement, no source.
constexpr double split_factor = 0.7;

/// Wood and plywood: break strain is bending strength over modulus, from memory, and wants a coupon.
Material wood(std::string_view name, double break_strain, double softness) {
    return {std::string(name), break_strain, break_strain * split_factor, softness, std::nullopt, true};
}

/// Hankinson's formula, of what is 1 along the grain and `across` square to it.
double hankinson(measure::Angle angle, double exponent, double across) {
    const double sine = std::pow(std::sin(angle.radians()), exponent);
    const double cosine = std::pow(std::cos(angle.radians()), exponent);
    return across / (sine + across * cosine);
}

}  // namespace

double strain_across_grain(measure::Angle angle) {
    return std::min(1.0, hankinson(angle, 1.75, 0.07) / hankinson(angle, 2, 0.08));
}

Material bent_across(Material material, measure::Angle angle) {
    if (!material.may_split) return material;
    const double part = strain_across_grain(angle);
    material.break_strain_inside *= part;
    material.break_strain_outside *= part;
    return material;
}

const std::vector<Material>& materials() {
    // Softness is known for MDF and yellow-poplar alone. The others take 1, as for an isotropic board: a softer board
    // spreads its bend over a longer hinge, so 1 gives the greater strain and errs to the careful side.
    static const std::vector<Material> known{
        {"mdf", 0.010, 0.008, 2.3, Peel{45, 2700}, false, 0.0005},
        wood("yellow-poplar", 0.0064, 2.25),
        wood("red-oak", 0.0079, 1),
        wood("white-pine", 0.0069, 1),
        wood("hard-maple", 0.0087, 1),
        wood("plywood", 0.0055, 1),
    };
    return known;
}

const Material* find_material(std::string_view name) {
    for (const Material& material : materials())
        if (material.name == name) return &material;
    return nullptr;
}

}  // namespace kerfpacket::bend
