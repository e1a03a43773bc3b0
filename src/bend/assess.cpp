#include "bend/assess.h"

#include <algorithm>

#include "measure/require.h"

namespace kerfpacket::bend {
namespace {

using namespace measure::literals;

/// Kerfs inside should still be this far from closing.
constexpr double closing_margin = 0.85;
/// Visible through paint; from the design notes, judgement.
constexpr Length facet_limit = 0.10_mm;
/// 3/32 in, less what rounding between units can take.
constexpr Length thin_web = Length::inches(3.0 / 32) - 0.001_mm;

/// Adds a concern and lowers the verdict to at least `verdict`.
void note(Assessment& assessment, Concern concern, Verdict verdict) {
    assessment.concerns.push_back(concern);
    if (assessment.verdict < verdict) assessment.verdict = verdict;
}

void judge_strain(Assessment& a) {
    if (a.utilisation > caution_up_to) note(a, Concern::strain_break, Verdict::break_likely);
    else if (a.utilisation > ok_up_to) note(a, Concern::strain_caution, Verdict::caution);
}

void judge_closing(Assessment& a, Length radius) {
    if (a.closes) note(a, Concern::closes_before_bend, Verdict::break_likely);
    else if (a.close_radius > closing_margin * radius) note(a, Concern::nearly_closes, Verdict::caution);
}

void judge_range(Assessment& a, const Range& range) {
    if (!range.depth) note(a, Concern::depth_out_of_range, Verdict::caution);
    if (!range.kerf) note(a, Concern::kerf_out_of_range, Verdict::caution);
    if (!range.spacing) note(a, Concern::spacing_out_of_range, Verdict::caution);
    if (!range.land) note(a, Concern::land_out_of_range, Verdict::caution);
}

}  // namespace

bool is_ok(const Cell& cell, const Material& material, KerfsOn side, Length radius) {
    const double limit = break_strain(cell, material, side);
    if (web_strain(cell, material.softness, radius) > ok_up_to * limit) return false;
    if (side == KerfsOn::inside && close_radius(cell, material.softness) > closing_margin * radius) return false;
    return facet(cell, material.softness, radius) <= facet_limit;
}

Assessment assess(const Cell& cell, const Material& material, KerfsOn side, Length radius, Angle turn, int kerfs) {
    measure::require(radius.mm() > 0 && kerfs > 0, "a bend has a radius and kerfs");
    const bool opening = side == KerfsOn::outside;
    Assessment a;
    a.strain = web_strain(cell, material.softness, radius);
    a.strain_limit = break_strain(cell, material, side);
    a.utilisation = a.strain / a.strain_limit;
    a.close_radius = opening ? Length() : close_radius(cell, material.softness);
    a.closes = a.close_radius > radius;
    a.facet = facet(cell, material.softness, radius);
    a.turn_per_kerf = turn / kerfs;
    a.closing_angle = closing_angle(cell);
    // A closing kerf narrows as an opening one widens, until it is shut.
    a.mouth = std::max(Length(), opened_mouth(cell, opening ? a.turn_per_kerf : -a.turn_per_kerf));
    a.least_radius = least_radius(cell, material.softness, a.strain_limit);

    judge_strain(a);
    judge_closing(a, radius);
    if (a.facet > facet_limit) note(a, Concern::facet_visible, Verdict::caution);
    if (opening && material.may_split) note(a, Concern::grain_may_split, Verdict::caution);
    if (cell.web() < thin_web) note(a, Concern::web_thin, Verdict::caution);
    judge_range(a, checked_range(cell));
    return a;
}

}  // namespace kerfpacket::bend
