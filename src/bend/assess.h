#pragma once
// Will it bend: strain against break strain, closing, facet, and the words "ok", "caution", "will likely break".

#include <string>
#include <vector>

#include "bend/cell.h"
#include "bend/verdict.h"

namespace kerfpacket::bend {

class Yield;

/// Why a verdict is no better, or what to look out for. The key names a sentence in templates (cautions.toml).
enum class Concern {
    strain_caution,      ///< utilisation over 0.60
    strain_break,        ///< utilisation over 0.90
    chance_caution,      ///< a coupon or trial counts, and more than 1 in 100 boards like this would break
    chance_break,        ///< the same, more than 1 in 10
    closes_before_bend,  ///< kerfs close before the wanted radius is reached
    nearly_closes,       ///< kerfs close within 15 % of the wanted radius
    facet_visible,       ///< facet over 0.10 mm
    grain_may_split,     ///< solid wood or plywood with opening kerfs
    web_thin,            ///< web under 3/32 in
    depth_out_of_range,
    kerf_out_of_range,
    spacing_out_of_range,
    land_out_of_range,  ///< outside the checked range
};

struct Assessment {
    Verdict verdict = Verdict::ok;
    double strain = 0;
    double strain_limit = 0;
    double utilisation = 0;
    bool closes = false;  ///< kerfs inside: closed before the bend is reached
    Length close_radius;  ///< 0 with kerfs outside
    Length facet;
    Angle turn_per_kerf;
    Angle closing_angle;
    Length mouth;         ///< width of a kerf's mouth when bent
    Length least_radius;  ///< of the length-keeping line, at utilisation 1
    std::vector<Concern> concerns;
};

/// A bend of constant curvature: `radius` of the length-keeping line, turned by `turn` in `kerfs` kerfs.
Assessment assess(const Cell& cell, const Material& material, KerfsOn side, Length radius, Angle turn, int kerfs);
Assessment assess(const Yield& yield, const Material& material, KerfsOn side, Length radius, Angle turn, int kerfs);

}  // namespace kerfpacket::bend
