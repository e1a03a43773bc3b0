#include "plan/make_piece.h"

#include <algorithm>

#include <fmt/format.h>

#include "bend/saw.h"
#include "measure/require.h"
#include "plan/search.h"
#include "plan/settle.h"
#include "plan/strip_room.h"

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;

/// What a setting is off by without anybody seeing it.
bend::Steps small_errors(measure::Unit unit) {
    if (unit == measure::Unit::inch)
        return {Length::inches(1.0 / 64), Length::inches(1.0 / 32), Length::inches(1.0 / 32)};
    return {0.5_mm, 1_mm, 1_mm};
}

/// Depth that may be lost at the back edge for a shorter spacer: what the depth stop is off by.
Length spacer_loss(measure::Unit unit) { return small_errors(unit).depth; }

void set_saw(Piece& piece, const job::Saw& saw, measure::Unit unit) {
    const Length blade = saw.blade_diameter.value;
    piece.groove_ramp = bend::groove_ramp(blade, piece.kerf_depth);
    if (saw.rear_limit) piece.rear_limit = saw.rear_limit->value;
    if (saw.trial)
        piece.rear_limit = saw.trial->ends && saw.trial->at_fence.value == Length()
                               ? bend::rear_limit_from_end(blade, saw.trial->depth.value, saw.trial->ends->value)
                               : bend::rear_limit_from_trial(blade, saw.trial->depth.value, saw.trial->at_fence.value);
    // Board width plus spacer less rear limit is never less than the width.
    piece.travel_needed = piece.width;
    if (!piece.rear_limit) return;
    piece.spacer = bend::spacer(*piece.rear_limit, unit);
    piece.travel_needed = bend::travel_needed(piece.width, *piece.spacer, *piece.rear_limit);
    piece.spacer_shorter = bend::spacer(*piece.rear_limit - bend::spacer_saving(blade, spacer_loss(unit)), unit);
    if (saw.travel) piece.width_reached = bend::width_reached(saw.travel->value, *piece.spacer, *piece.rear_limit);
}

/// Kerfs whose gaps differ by more than a bend takes without showing it.
std::vector<int> weak_links(const Piece& piece) {
    std::vector<int> weak;
    if (piece.even()) return weak;
    for (std::size_t i = 1; i + 1 < piece.kerfs.size(); ++i) {
        const double ratio = (piece.kerfs[i + 1].at - piece.kerfs[i].at) / (piece.kerfs[i].at - piece.kerfs[i - 1].at);
        if (std::max(ratio, 1 / ratio) > most_gap_ratio * 1.001) weak.push_back(piece.kerfs[i].n);
    }
    return weak;
}

/// The depth that is cut between a shallower and a deeper one, or three in a row where one of those cannot be.
std::vector<Length> chart_depths(const Piece& piece, measure::Unit unit) {
    const Length step = depth_step(unit);
    const auto can_be = [&](Length depth) {
        return depth > piece.thickness / 8 && piece.thickness - depth > bend::least_web - 0.001_mm;
    };
    std::vector<Length> depths{piece.kerf_depth};
    for (int i = 1; i <= 2 && depths.size() < 3; ++i) {
        if (can_be(piece.kerf_depth + step * i)) depths.push_back(piece.kerf_depth + step * i);
        if (can_be(piece.kerf_depth - step * i) && depths.size() < 3)
            depths.insert(depths.begin(), piece.kerf_depth - step * i);
    }
    return depths;
}

LimitCurve limit_curve(const Piece& piece, bend::KerfsOn on, Length depth, const bend::Material& material,
                       measure::Unit unit) {
    LimitCurve curve{depth, {}};
    const bool inch = unit == measure::Unit::inch;
    const Length step = inch ? Length::inches(1.0 / 32) : 1_mm;
    const Length most = inch ? 1_in : 25_mm;
    for (int i = inch ? 4 : 3; step * i <= most + 0.001_mm; ++i) {
        bend::Cell cell = piece.cell(step * i);
        cell.depth = depth;
        if (cell.kerf > cell.spacing * 0.85) continue;
        const Length line = bend::tightest(cell, material, on).radius;
        curve.points.emplace_back(cell.spacing, bend::plain_radius(cell, material, on, line));
    }
    return curve;
}

void add_chart(Piece& piece, bend::KerfsOn on, const bend::Material& material, measure::Unit unit) {
    for (const Length depth : chart_depths(piece, unit))
        piece.limit_curves.push_back(limit_curve(piece, on, depth, material, unit));
}

job::Diagnostics add_deep_kerfs(Piece& piece, const job::Board& board, const bend::Material& material,
                                measure::Unit unit) {
    for (const job::TooDeep& deep : board.too_deep) {
        const std::string depth = measure::length_text(deep.depth.value, unit);
        if (deep.n.value > static_cast<int>(piece.kerfs.size()))
            return {{job::Severity::error, deep.n.at, fmt::format("there is no kerf {}", deep.n.value),
                     fmt::format("piece {} has kerfs 1 to {}", piece.id, piece.kerfs.size())}};
        if (deep.depth.value <= piece.kerf_depth)
            return {{job::Severity::error, deep.depth.at,
                     fmt::format("kerf {} is not too deep at {}", deep.n.value, depth),
                     fmt::format("piece {} is cut {} deep", piece.id, measure::length_text(piece.kerf_depth, unit))}};
        const Kerf& kerf = piece.kerfs.at(static_cast<std::size_t>(deep.n.value - 1));
        const Length radius = kerf.radius.mm() > 0 ? kerf.radius : Length::mm(1e9);
        piece.deep_kerfs.push_back(
            {kerf.n, deep.depth.value,
             bend::overcut(piece.cell(kerf.spacing), material, kerf.on, radius, deep.depth.value)});
    }
    return {};
}

/// T / 2R over break strain, where the board's middle is bent most.
double solid_utilisation(const Piece& piece, const bend::Material& material) {
    const bool opening = piece.kerfs_on == bend::KerfsOn::outside;
    const Length middle = piece.finish_radius + piece.thickness / (opening ? 2 : -2);
    return middle.mm() > 0 ? piece.thickness / (2 * middle) / material.break_strain_inside : 0;
}

/// As the kerf is now, before anything is done about it.
bend::Verdict verdict_now(const bend::Overcut& answer) {
    if (answer.mend == bend::Mend::scrap || answer.web < bend::least_web - 0.001_mm) return bend::Verdict::break_likely;
    return bend::strain_verdict(answer.alone);
}

/// The verdict on a piece is that of its worst kerf as it is now.
void judge_deep_kerfs(Piece& piece) {
    for (const DeepKerf& kerf : piece.deep_kerfs)
        piece.bend.verdict = std::max(piece.bend.verdict, verdict_now(kerf.answer));
}

void add_coupons(Piece& piece, const CouponedWood& known) {
    piece.coupon = known.coupon;
    piece.tried = known.tried;
    Chance& chance = piece.chance;
    for (const CouponResult& coupon : piece.tried) {
        if (!coupon.counts) continue;
        ++(coupon.trial ? chance.trials : chance.coupons);
        chance.lowest = chance.lowest > 0 ? std::min(chance.lowest, coupon.strain) : coupon.strain;
        chance.mean += coupon.strain;
    }
    if (chance.counted()) chance.mean /= chance.coupons + chance.trials;
}

}  // namespace

tl::expected<Piece, job::Diagnostics> make_piece(const Request& wanted, const job::Job& job) {
    const job::Board& board = *wanted.wanted;
    const measure::Unit unit = job.header.units;
    if (wanted.boards > 1 && !board.kerfs.empty())
        return tl::unexpected(
            job::Diagnostics{{job::Severity::error, board.kerfs.front().at,
                              "a head with a point is lined by two boards: kerfs cannot be given for both",
                              "give a spacing, or leave it to \"solve\""}});
    const auto known = wood_of(board, tight_spots(wanted).front().on, job);
    if (!known) return tl::unexpected(known.error());
    auto piece = settle(wanted, known->wood, job);
    if (!piece) return piece;
    if (job::Diagnostics wrong = check_strips(*piece, board, job); !wrong.empty()) return tl::unexpected(wrong);
    const bend::Material& material = known->wood.material;
    piece->own_material = std::any_of(job.materials.begin(), job.materials.end(),
                                      [&](const job::Material& own) { return own.name.value == board.material.value; });
    set_saw(*piece, job.saw, unit);
    piece->weak_links = weak_links(*piece);
    const Kerf kerf = piece->kerfs.at(static_cast<std::size_t>(piece->governing - 1));
    const bend::Cell cell = piece->cell(kerf.spacing);
    piece->sensitivity = bend::sensitivity(cell, material, kerf.on, piece->bend_radius, small_errors(unit));
    piece->overcut_limits = bend::overcut_limits(cell, material, kerf.on, piece->bend_radius, small_errors(unit).depth);
    add_chart(*piece, kerf.on, material, unit);
    piece->chance = chance_of(*piece, known->wood, job);
    add_levels(*piece, known->wood, job);
    add_coupons(*piece, *known);
    const job::Diagnostics wrong = add_deep_kerfs(*piece, board, material, unit);
    if (!wrong.empty()) return tl::unexpected(wrong);
    judge_deep_kerfs(*piece);
    piece->solid_utilisation = solid_utilisation(*piece, material);
    piece->springs_back = bend::stiffness_ratio(cell, material.softness);
    constexpr double told_moisture = 5;
    piece->moisture_move = piece->blank_length * (material.movement * told_moisture);
    return piece;
}

}  // namespace kerfpacket::plan
