#pragma once
// What is known of the boards that are bent. Every figure is a starting value that a coupon replaces.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bend/chance.h"
#include "measure/length.h"

namespace kerfpacket::bend {

/// Peeling of the web from the uncut part when kerfs open.
struct Peel {
    double fracture_energy_j_m2 = 0;  ///< Gc
    double modulus_mpa = 0;           ///< E
};

struct Material {
    std::string name;                 ///< as the job file writes it
    double break_strain_inside = 0;   ///< kerfs inside the bend (closing)
    double break_strain_outside = 0;  ///< kerfs outside (opening), before peel
    double softness = 1;              ///< the factor O: 1 for an isotropic board
    std::optional<Peel> peel;
    bool may_split = false;  ///< grain along the board, that can split when kerfs open: always at least a caution
    double movement = 0;  ///< along the board, of its length for a percent of moisture; 0 where it is next to nothing
    double scatter = usual_scatter;  ///< of its break strain from spot to spot, as a part of the mean
};

/// Part of the break strain that is left where the bend crosses the grain at an angle: the ratio of Hankinson's formula
/// for rupture to the same for the modulus, at most 1. Exponents 1.75 and 2, strength and modulus across the grain 0.07
/// and 0.08 of those along it: the middle of what the Wood Handbook gives for bending and for the modulus (chapter 5,
/// FPL-GTR-190; from memory).
double strain_across_grain(measure::Angle angle);
/// The material of a board that is bent so: one without grain stays as it is.
Material bent_across(Material material, measure::Angle angle);

const std::vector<Material>& materials();
const Material* find_material(std::string_view name);

}  // namespace kerfpacket::bend
