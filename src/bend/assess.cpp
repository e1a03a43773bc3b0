#include "bend/assess.h"

#include <algorithm>

#include "bend/limit.h"
#include "bend/yield.h"
#include "measure/require.h"

namespace kerfpacket::bend {
namespace {

using namespace measure::literals;

/// What rounding between units can take.
constexpr Length slack = 0.001_mm;

/// Adds a concern and lowers the verdict to at least `verdict`.
void note(Assessment& assessment, Concern concern, Verdict verdict) {
    assessment.concerns.push_back(concern);
    if (assessment.verdict < verdict) assessment.verdict = verdict;
}

void judge_strain(Assessment& a) {
    const Verdict verdict = strain_verdict(a.utilisation);
    if (verdict == Verdict::break_likely) note(a, Concern::strain_break, verdict);
    else if (verdict == Verdict::caution) note(a, Concern::strain_caution, verdict);
}

void judge_closing(Assessment& a, const Cell& cell, Length radius) {
    if (a.closes) note(a, Concern::closes_before_bend, Verdict::break_likely);
    else if (a.close_radius > closing_margin(cell) * radius) note(a, Concern::nearly_closes, Verdict::caution);
}

void judge_range(Assessment& a, const Range& range) {
    if (!range.depth) note(a, Concern::depth_out_of_range, Verdict::caution);
    if (!range.kerf) note(a, Concern::kerf_out_of_range, Verdict::caution);
    if (!range.spacing) note(a, Concern::spacing_out_of_range, Verdict::caution);
    if (!range.land) note(a, Concern::land_out_of_range, Verdict::caution);
}

}  // namespace

Assessment assess(const Cell& cell, const Material& material, KerfsOn side, Length radius, Angle turn, int kerfs) {
    return assess(Yield(cell, material.softness), material, side, radius, turn, kerfs);
}

Assessment assess(const Yield& yield, const Material& material, KerfsOn side, Length radius, Angle turn, int kerfs) {
    measure::require(radius.mm() > 0 && kerfs > 0, "a bend has a radius and kerfs");
    const bool opening = side == KerfsOn::outside;
    const Cell& cell = yield.cell();
    Assessment a;
    a.strain = yield.web_strain(radius);
    a.strain_limit = yield.break_strain(material, side);
    a.utilisation = a.strain / a.strain_limit;
    a.close_radius = opening ? Length() : yield.close_radius();
    a.closes = a.close_radius > radius;
    a.facet = yield.facet(radius);
    a.turn_per_kerf = turn / kerfs;
    a.closing_angle = closing_angle(cell);
    // A closing kerf narrows as an opening one widens, until it is shut.
    a.mouth = std::max(Length(), opened_mouth(cell, opening ? a.turn_per_kerf : -a.turn_per_kerf));
    a.least_radius = yield.least_radius(a.strain_limit);

    judge_strain(a);
    if (!opening) judge_closing(a, cell, radius);
    if (a.facet > facet_limit) note(a, Concern::facet_visible, Verdict::caution);
    if (opening && material.may_split) note(a, Concern::grain_may_split, Verdict::caution);
    if (cell.thinnest_web() < thin_web - slack) note(a, Concern::web_thin, Verdict::caution);
    judge_range(a, checked_range(cell));
    return a;
}

}  // namespace kerfpacket::bend
