// What the kerfs of a piece come to as a chance of breaking.

#include <algorithm>
#include <array>
#include <cmath>

#include "bend/limit.h"
#include "plan/lay_out.h"

namespace kerfpacket::plan {
namespace {

/// What the closed form of strain may be wrong by. Source: src/bend/NOTES.md.
constexpr double formula_error = 0.048;
/// From a bound, within which an error may lie anywhere, to its standard deviation.
const double evenly = 1 / std::sqrt(3.0);

/// What the depth stop is off by.
Length depth_error(measure::Unit unit) {
    return unit == measure::Unit::inch ? Length::inches(1.0 / 64) : Length::mm(0.5);
}

/// Of the strain at the kerf that governs, when it is cut a little shallower or deeper.
double by_depth(const Laid& laid, const bend::Material& material, measure::Unit unit) {
    const Kerf& kerf = laid.governing_kerf();
    const bend::Cell cell = laid.cut.cell(kerf.spacing);
    const double meant =
        bend::web_strain(cell, material.softness, laid.radii.line) / bend::break_strain(cell, material, kerf.on);
    double most = 0;
    for (const Length by : {-depth_error(unit), depth_error(unit)}) {
        bend::Cell other = cell;
        other.depth += by;
        if (other.depth.mm() <= 0 || other.web().mm() <= 0) continue;
        const double then =
            bend::web_strain(other, material.softness, laid.radii.line) / bend::break_strain(other, material, kerf.on);
        most = std::max(most, std::abs(std::log(then / meant)));
    }
    return most;
}

/// Of the curvature, when span and rise are read wrong. Of a curve that is no arc a bound: its sharpest place goes with
/// the square of the rise at most.
double by_tape(const Request& wanted, bool circular, Length tape) {
    if (wanted.rise.mm() <= 0 || wanted.span.mm() <= 0) return 0;
    if (!circular) return 2 * (tape / wanted.rise + tape / wanted.span);
    return bend::coupon_error({wanted.span, wanted.rise}, tape, tape);
}

struct Load {
    double bound = 0;   ///< depth and tape at worst
    double spread = 0;  ///< standard deviation of all errors of the strain
};

Load load_of(const Laid& laid, const Request& wanted, const bend::Material& material, const job::Job& job) {
    const Length tape = job.header.tape > Length() ? job.header.tape : job::usual_tape;
    const double depth = by_depth(laid, material, job.header.units);
    const double radius = by_tape(wanted, laid.circular, tape);
    return {depth + radius, evenly * std::hypot(depth, radius, formula_error)};
}

/// Every kerf that bends, in either way of breaking; those that are alike together.
std::vector<bend::Link> links_of(const Laid& laid, const Wood& wood, double load) {
    std::vector<bend::Link> links;
    const auto add = [&](double limit, double strain, bend::Mode mode) {
        const double margin = std::log(limit / strain) + wood.known.mean(mode);
        const double spread = std::hypot(wood.known.spread(mode), load);
        for (bend::Link& link : links)
            if (std::abs(link.margin - margin) < 1e-9 && std::abs(link.spread - spread) < 1e-9) {
                ++link.kerfs;
                return;
            }
        links.push_back({margin, spread, 1});
    };
    for (const Kerf& kerf : laid.blank.kerfs) {
        if (kerf.radius.mm() <= 0) continue;
        const bend::Cell cell = laid.cut.cell(kerf.spacing);
        const double strain = bend::web_strain(cell, wood.table.softness, kerf.radius);
        const bool outside = kerf.on == bend::KerfsOn::outside;
        add(outside ? wood.table.break_strain_outside : wood.table.break_strain_inside, strain, bend::Mode::strain);
        if (outside && wood.table.peel) add(bend::peel_strain(cell, wood.table), strain, bend::Mode::peel);
    }
    return links;
}

Chance chance_of(const std::vector<bend::Link>& links, const Load& load, const Wood& wood) {
    Chance chance;
    chance.load = load.bound;
    chance.breaks = bend::chance_of_breaking(links, wood.known.spot());
    return chance;
}

}  // namespace

Chance chance_of(const Laid& laid, const Request& wanted, const Wood& wood, const job::Job& job) {
    const Load load = load_of(laid, wanted, wood.table, job);
    return chance_of(links_of(laid, wood, load.spread), load, wood);
}

Chance chance_with_levels(const Laid& laid, const Request& wanted, const Wood& wood, const job::Job& job) {
    const Load load = load_of(laid, wanted, wood.table, job);
    const std::vector<bend::Link> links = links_of(laid, wood, load.spread);
    Chance chance = chance_of(links, load, wood);
    if (links.empty()) return chance;
    constexpr std::array chances{0.01, 0.05, 0.25, 0.5};
    for (std::size_t i = 0; i < chances.size(); ++i)
        chance.times.at(i) = bend::times_for_chance(links, wood.known.spot(), chances.at(i));
    return chance;
}

}  // namespace kerfpacket::plan
