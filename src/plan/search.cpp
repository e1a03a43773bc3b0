#include "plan/search.h"

#include <algorithm>
#include <cmath>

#include "measure/require.h"

namespace kerfpacket::plan {
namespace {

/// Kerfs leave at least this part of the spacing as land. Source: the same.
constexpr double most_kerf_ratio = 0.85;
/// Rounding between units must not lose a depth that just fits.
constexpr Length slack = Length::mm(0.001);

}  // namespace

Length Bent::line_radius(const TightSpot& spot, const bend::Cell& cell) const {
    const Length below_face = bend::length_keeping_depth(cell, wood.material.softness);
    return spot.line_radius(measured_to, thickness, below_face);
}

bool Bent::is_ok(const bend::Cell& cell) const {
    return std::all_of(spots.begin(), spots.end(), [&](const TightSpot& spot) {
        return bend::tightest(cell, wood.material, spot.on).radius <= line_radius(spot, cell);
    });
}

const TightSpot& Bent::worst(const bend::Cell& cell) const {
    measure::require(!spots.empty(), "a bend has a tight spot");
    const auto share = [&](const TightSpot& spot) {
        return bend::tightest(cell, wood.material, spot.on).radius / line_radius(spot, cell);
    };
    return *std::max_element(spots.begin(), spots.end(),
                             [&](const TightSpot& a, const TightSpot& b) { return share(a) < share(b); });
}

bend::Assessment Bent::assess(const bend::Cell& cell) const {
    const TightSpot& spot = worst(cell);
    const Length radius = line_radius(spot, cell);
    return bend::assess(cell, wood.material, spot.on, radius, Angle::radians(cell.spacing / radius), 1);
}

Bent bent_of(const Request& wanted, const Wood& wood, const job::Job& job) {
    const job::Board& board = *wanted.wanted;
    return {board.thickness.value,
            job.saw.kerf.value,
            job.saw.blade_diameter.value,
            wood,
            wanted.bend->spots,
            wanted.measured_to,
            plies_of(board),
            profile_of(board)};
}

std::optional<Length> given_depth(const job::Board& board) {
    if (board.kerf_depth.given) return board.kerf_depth.given;
    return board.kerf_depth.half ? std::optional(usual_depth(board)) : std::nullopt;
}

Length depth_step(measure::Unit unit) { return unit == measure::Unit::inch ? Length::inches(1.0 / 16) : Length::mm(1); }

std::vector<Length> cross_ply_depths(const std::vector<Length>& plies, Length step, Length least, Length most) {
    std::vector<Length> all;
    Length depth;
    for (std::size_t i = plies.size(); i-- > 0;) {
        const Length middle = depth + plies[i] / 2;
        const Length nearest = step * std::round(middle / step);
        const bool within = measure::abs(nearest - middle) < plies[i] / 2;
        if (i % 2 == 1 && within && nearest >= least && nearest <= most) all.push_back(nearest);
        depth += plies[i];
    }
    return all;
}

Length first_depth(const job::Board& board, measure::Unit unit) {
    const Length usual = usual_depth(board);
    const std::vector<Length> all =
        cross_ply_depths(plies_of(board), depth_step(unit) / 2, Length(), board.thickness.value - bend::least_web);
    const auto nearest = std::min_element(
        all.begin(), all.end(), [&](Length a, Length b) { return measure::abs(a - usual) < measure::abs(b - usual); });
    return nearest == all.end() ? usual : *nearest;
}

std::vector<Length> depths(const Bent& bent, Length web, measure::Unit unit) {
    const Length step = depth_step(unit);
    const Length reach = bent.blade / 2 - step;
    const Length least = bent.thickness * least_depth_ratio - slack;
    const Length most = std::min(bent.thinnest() - web, reach) + slack;
    if (!bent.plies.empty()) return cross_ply_depths(bent.plies, step / 2, least, most);
    std::vector<Length> all;
    for (int i = 1; step * i <= most; ++i)
        if (step * i >= least) all.push_back(step * i);
    // Down to the least web itself, in half steps, not only to the last whole step before it.
    for (const Length thinnest : {bend::thin_web, web}) {
        const Length deepest =
            step / 2 * std::floor((std::min(bent.thinnest() - thinnest, reach) + slack) / (step / 2));
        const auto after = std::find_if(all.begin(), all.end(), [&](Length d) { return d > deepest - slack; });
        const bool there = after != all.end() && *after < deepest + slack;
        if (thinnest >= web && deepest >= least && !there) all.insert(after, deepest);
    }
    return all;
}

Length closest_spacing(Length kerf) { return std::max(tight_spacing, kerf / most_kerf_ratio); }

std::optional<Length> least_radius(const Bent& bent, measure::Unit unit, bend::Verdict no_worse) {
    const bool ok = no_worse == bend::Verdict::ok;
    std::optional<Length> least;
    for (const Length depth : depths(bent, ok ? bend::thin_web : bend::least_web, unit)) {
        const bend::Cell cell = bent.cell(depth, closest_spacing(bent.kerf));
        if (ok && !bend::checked_range(cell).depth) continue;
        Length radius;
        for (const TightSpot& spot : bent.spots) {
            const Length line = bend::tightest(cell, bent.wood.material, spot.on, no_worse).radius;
            radius = std::max(radius, bend::plain_radius(cell, bent.wood.material, spot.on, line));
        }
        if (!least || radius < *least) least = radius;
    }
    return least;
}

std::optional<Setting> thickest_ok_web(const Bent& bent, Length spacing, measure::Unit unit) {
    for (const Length depth : depths(bent, bend::thin_web, unit)) {
        const bend::Cell cell = bent.cell(depth, spacing);
        if (bend::checked_range(cell).depth && bent.is_ok(cell)) {
            const bend::Assessment a = bent.assess(cell);
            return Setting{depth, a.verdict, a.utilisation};
        }
    }
    return std::nullopt;
}

std::optional<Setting> least_strained(const Bent& bent, Length spacing, const std::vector<Length>& depths) {
    std::optional<Setting> best;
    for (const Length depth : depths) {
        const bend::Assessment a = bent.assess(bent.cell(depth, spacing));
        const Setting setting{depth, a.verdict, a.utilisation};
        if (a.verdict != bend::Verdict::break_likely && (!best || setting.utilisation < best->utilisation))
            best = setting;
    }
    return best;
}

std::optional<Setting> best_setting(const Bent& bent, Length spacing, measure::Unit unit) {
    const auto ok = thickest_ok_web(bent, spacing, unit);
    return ok ? ok : least_strained(bent, spacing, depths(bent, bend::least_web, unit));
}

}  // namespace kerfpacket::plan
