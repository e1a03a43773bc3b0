#include "bend/overcut.h"

#include <algorithm>

#include "bend/assess.h"
#include "bend/limit.h"
#include "bend/section.h"
#include "measure/require.h"

namespace kerfpacket::bend {
namespace {

/// A thinner web is torn by the filling of the kerf. Judgement.
constexpr Length fillable_web = Length::inches(1.0 / 32);
/// Where the board is a caution already, a deep kerf may add this much to it and stay. Judgement.
constexpr double little_more = 1.1;

/// A bend as it is meant.
struct Bend {
    const Material& material;
    KerfsOn side = KerfsOn::outside;
    Length radius;

    double utilisation(const Cell& cell) const {
        return web_strain(cell, material.softness, radius) / break_strain(cell, material, side);
    }
    /// Of a deep kerf between others: the same moment, the square of the webs.
    double deep_between(const Cell& deep, const Cell& others) const {
        if (!deep.profile.empty()) return moulded_between(deep, others);
        const double webs = others.web() / deep.web();
        const double limits = break_strain(others, material, side) / break_strain(deep, material, side);
        return utilisation(others) * webs * webs * limits;
    }
    /// Of a web that is not as thick everywhere: its stiffness over the lever of its farthest wood.
    double moulded_between(const Cell& deep, const Cell& others) const {
        const Section cut = web_section(deep);
        const Section meant = web_section(others);
        const double times = cut.extreme / meant.extreme * (meant.stiffness / cut.stiffness);
        const double limits = break_strain(others, material, side) / break_strain(deep, material, side);
        return utilisation(others) * times * limits;
    }
};

bool holds(double after, double before) {
    return after <= ok_up_to || (after <= caution_up_to && after <= before * little_more);
}

Mend mend(const Overcut& kerf, const Bend& bend, const Cell& filled) {
    const bool web = kerf.web >= least_web;
    if (web && holds(kerf.alone, kerf.before)) return Mend::keep;
    if (web && holds(kerf.eased, kerf.before)) return Mend::ease;
    const Assessment neighbours =
        assess(filled, bend.material, bend.side, bend.radius, Angle::radians(filled.spacing / bend.radius), 1);
    if (kerf.web >= fillable_web && neighbours.verdict != Verdict::break_likely) return Mend::fill;
    return Mend::scrap;
}

}  // namespace

Overcut overcut(const Cell& cell, const Material& material, KerfsOn side, Length radius, Length depth,
                std::optional<Length> beside) {
    measure::require(depth >= cell.depth, "a kerf that is too deep is deeper than meant");
    const Bend bend{material, side, radius};
    Cell deep = cell;
    deep.depth = std::min(depth, cell.thinnest());
    Cell halfway = cell;
    halfway.depth = (cell.depth + deep.depth) / 2;
    Cell around = cell;
    around.depth = std::clamp(beside.value_or(cell.depth), cell.depth, deep.depth);
    Cell filled = cell;
    filled.spacing = cell.spacing * 1.5;
    Overcut kerf;
    kerf.web = deep.thinnest_web();
    kerf.ease_depth = halfway.depth;
    kerf.before = bend.utilisation(cell);
    kerf.filled = bend.utilisation(filled);
    if (kerf.web.mm() > 0) {
        kerf.alone = bend.deep_between(deep, around);
        // The outer ones that are deepened stand beside good ones.
        kerf.eased = std::max(bend.deep_between(deep, halfway), bend.deep_between(halfway, cell));
    }
    kerf.mend = mend(kerf, bend, filled);
    return kerf;
}

OvercutLimits overcut_limits(const Cell& cell, const Material& material, KerfsOn side, Length radius, Length step) {
    OvercutLimits limits{cell.depth, cell.depth, cell.depth};
    Mend reached = Mend::keep;
    for (int i = 1; cell.depth + step * i < cell.thinnest(); ++i) {
        const Length depth = cell.depth + step * i;
        // A deeper cut never needs less.
        reached = std::max(reached, overcut(cell, material, side, radius, depth).mend);
        if (reached == Mend::keep) limits.keep = depth;
        if (reached <= Mend::ease) limits.ease = depth;
        if (reached <= Mend::fill) limits.fill = depth;
    }
    return limits;
}

}  // namespace kerfpacket::bend
