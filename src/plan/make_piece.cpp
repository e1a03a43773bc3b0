#include "plan/make_piece.h"

#include <algorithm>
#include <cmath>
#include <utility>

#include "bend/moulded.h"
#include "bend/saw.h"
#include "bend/section.h"
#include "measure/require.h"
#include "plan/deep_kerfs.h"
#include "plan/neighbours.h"
#include "plan/remedies.h"
#include "plan/settle.h"
#include "plan/splice.h"
#include "plan/strip_room.h"

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;
using job::say;

/// What a setting is off by without anybody seeing it.
bend::Steps small_errors(measure::Unit unit) {
    if (unit == measure::Unit::inch)
        return {Length::inches(1.0 / 64), Length::inches(1.0 / 32), Length::inches(1.0 / 32)};
    return {0.5_mm, 1_mm, 1_mm};
}

/// Depth that may be lost at the back edge for a shorter spacer: what the depth stop is off by.
Length spacer_loss(measure::Unit unit) { return small_errors(unit).depth; }

/// Given, or from the trial groove.
std::optional<Length> rear_limit(const job::Saw& saw) {
    const Length blade = saw.blade_diameter.value;
    if (!saw.trial) return saw.rear_limit ? std::optional(saw.rear_limit->value) : std::nullopt;
    return saw.trial->ends && saw.trial->at_fence.value == Length()
               ? bend::rear_limit_from_end(blade, saw.trial->depth.value, saw.trial->ends->value)
               : bend::rear_limit_from_trial(blade, saw.trial->depth.value, saw.trial->at_fence.value);
}

/// `cosine`: of the angle by which the kerfs stand off square. The blade runs along the kerf, where board and spacer
/// are longer by it.
AtSaw at_saw(Length width, Length depth, double cosine, const job::Saw& saw, measure::Unit unit) {
    const Length blade = saw.blade_diameter.value;
    const Length ramp = bend::groove_ramp(blade, depth);
    const std::optional<Length> limit = rear_limit(saw);
    // Board width plus spacer less rear limit is never less than the width.
    if (!limit) return {.travel_needed = width / cosine, .groove_ramp = ramp};
    const Length spacer = bend::spacer(*limit * cosine, unit);
    const auto reached = [&](const auto& travel) {
        return bend::width_reached(travel.value, spacer / cosine, *limit) * cosine;
    };
    return {
        .spacer = spacer,
        .travel_needed = bend::travel_needed(width / cosine, spacer / cosine, *limit),
        .groove_ramp = ramp,
        .rear_limit = limit,
        .spacer_shorter = bend::spacer((*limit - bend::spacer_saving(blade, spacer_loss(unit))) * cosine, unit),
        .width_reached = saw.travel ? std::optional(reached(*saw.travel)) : std::nullopt,
    };
}

/// The same of a round blank that is held on two blocks, its wide edge to the fence.
AtSaw at_saw(const Splay& splay, Length wide_radius, Length depth, const job::Saw& saw, measure::Unit unit) {
    const bool inch = unit == measure::Unit::inch;
    Blocks blocks{inch ? 1_in : 25_mm, inch ? 6_in : 150_mm, {}};
    blocks.half = std::min(blocks.half, wide_radius / 2);
    blocks.bow = wide_radius - Length::mm(std::sqrt(std::pow(wide_radius.mm(), 2) - std::pow(blocks.half.mm(), 2)));
    const Length off = blocks.size - blocks.bow;
    const Length blade = saw.blade_diameter.value;
    const Length width = splay.sawn_width();
    AtSaw at{.travel_needed = width, .groove_ramp = bend::groove_ramp(blade, depth), .blocks = blocks};
    at.rear_limit = rear_limit(saw);
    if (!at.rear_limit) return at;
    const Length limit = *at.rear_limit;
    at.spacer = bend::spacer(limit - off, unit);
    at.travel_needed = bend::travel_needed(width, *at.spacer + off, limit);
    at.spacer_shorter = bend::spacer(limit - bend::spacer_saving(blade, spacer_loss(unit)) - off, unit);
    if (saw.travel) at.width_reached = bend::width_reached(saw.travel->value, *at.spacer + off, limit);
    return at;
}

AtSaw at_saw(const Laid& laid, const job::Board& board, const job::Saw& saw, measure::Unit unit) {
    if (!laid.splay) return at_saw(board.width.value, laid.cut.depth, laid.rake ? laid.rake->cosine() : 1, saw, unit);
    const Splay& splay = *laid.splay;
    if (!laid.circular) return at_saw(splay.sawn_width(), laid.cut.depth, 1, saw, unit);
    const FlatBlank flat(splay, laid.blank);
    return at_saw(splay, flat.radius(laid.blank.centre()) + splay.wide_edge(), laid.cut.depth, saw, unit);
}

/// With the rectangles that its blanks lie in, if it splays: `splay` is that of the whole.
Blank boxed(Blank blank, const Splay& splay, measure::Unit unit) {
    const Rect box = FlatBlank(splay, blank).outline().bounds();
    blank.box = Point{measure::up_to_tape(box.width(), unit), measure::up_to_tape(box.height(), unit)};
    return blank;
}

std::vector<Blank> boxed(std::vector<Blank> blanks, const Laid& laid, measure::Unit unit) {
    if (!laid.splay) return blanks;
    Length from;
    for (Blank& blank : blanks) {
        const Length to = from + blank.length;
        blank = boxed(std::move(blank), laid.splay->part(laid.blank, from, to), unit);
        from = to;
    }
    return blanks;
}

/// A material whose figures are the user's.
bool is_own(const std::string& name, const job::Job& job) {
    return std::any_of(job.materials.begin(), job.materials.end(),
                       [&](const job::Material& own) { return own.name.value == name; });
}

Gaps gaps_of(const Laid& laid, const std::vector<Joint>& joints) {
    Gaps gaps{laid.cut.least_spacing, laid.cut.spacing};
    if (joints.empty()) return gaps;
    const std::vector<Kerf>& kerfs = laid.blank.kerfs;
    const double square = laid.rake ? laid.rake->cosine() : 1;
    std::vector<Length> usual;
    for (std::size_t i = 0; i + 1 < kerfs.size(); ++i) {
        const bool over = std::any_of(joints.begin(), joints.end(), [&](const Joint& joint) {
            return joint.gone > 0 && kerfs[i].at < joint.at && joint.at < kerfs[i + 1].at;
        });
        (over ? gaps.over_joints : usual).push_back((kerfs[i + 1].at - kerfs[i].at) * square);
    }
    if (usual.empty() || gaps.over_joints.empty()) return gaps;
    const auto [least, most] = std::minmax_element(usual.begin(), usual.end());
    gaps.least = *least;
    gaps.most = *most;
    return gaps;
}

/// Kerfs whose gaps differ by more than a bend takes without showing it. Not those beside a joint: it stands only where
/// they bear what it leaves to them, has a caution of its own, and a block behind it.
std::vector<int> weak_links(const Laid& laid, const std::vector<Joint>& joints) {
    std::vector<int> weak;
    if (laid.cut.even()) return weak;
    const std::vector<Kerf>& kerfs = laid.blank.kerfs;
    for (std::size_t i = 1; i + 1 < kerfs.size(); ++i) {
        const bool at_joint = std::any_of(joints.begin(), joints.end(), [&](const Joint& joint) {
            return joint.gone > 0 && joint.at > kerfs[i - 1].at && joint.at < kerfs[i + 1].at;
        });
        if (!at_joint && laid.blank.gap_ratio(i) > most_gap_ratio * 1.001) weak.push_back(kerfs[i].n);
    }
    return weak;
}

/// The depth that is cut between a shallower and a deeper one, or three in a row where one of those cannot be.
std::vector<Length> chart_depths(const Cutting& cut, measure::Unit unit) {
    const Length step = depth_step(unit);
    const auto can_be = [&](Length depth) {
        return depth > cut.thickness / 8 && cut.thinnest() - depth > bend::least_web - 0.001_mm;
    };
    std::vector<Length> depths{cut.depth};
    for (int i = 1; i <= 2 && depths.size() < 3; ++i) {
        if (can_be(cut.depth + step * i)) depths.push_back(cut.depth + step * i);
        if (can_be(cut.depth - step * i) && depths.size() < 3) depths.insert(depths.begin(), cut.depth - step * i);
    }
    return depths;
}

LimitCurve limit_curve(const Cutting& cut, bend::KerfsOn on, Length depth, const bend::Material& material,
                       measure::Unit unit) {
    LimitCurve curve{depth, {}};
    const bool inch = unit == measure::Unit::inch;
    const Length step = inch ? Length::inches(1.0 / 32) : 1_mm;
    const Length most = inch ? 1_in : 25_mm;
    for (int i = inch ? 4 : 3; step * i <= most + 0.001_mm; ++i) {
        bend::Cell cell = cut.cell(step * i);
        cell.depth = depth;
        if (cell.kerf > cell.spacing * 0.85) continue;
        const Length line = bend::tightest(cell, material, on).radius;
        curve.points.emplace_back(cell.spacing, bend::plain_radius(cell, material, on, line));
    }
    return curve;
}

std::vector<LimitCurve> limit_curves(const Cutting& cut, bend::KerfsOn on, const bend::Material& material,
                                     measure::Unit unit) {
    std::vector<LimitCurve> curves;
    for (const Length depth : chart_depths(cut, unit)) curves.push_back(limit_curve(cut, on, depth, material, unit));
    return curves;
}

/// T / 2R over break strain, where the board's middle is bent most; of a moulded board the line that it bends about.
double solid_utilisation(const Laid& laid, const bend::Material& material) {
    const Length lever = bend::web_section(laid.cut.cell(laid.cut.spacing)).whole;
    const Length middle = laid.radii.finish + lever * outward(laid.kerfs_on);
    return middle.mm() > 0 ? lever / middle / material.break_strain_inside : 0;
}

bend::Assessment with_verdict(bend::Assessment bend, bend::Verdict verdict) {
    bend.verdict = verdict;
    return bend;
}

/// The chance with what it rests on.
Chance with_coupons(Chance chance, const std::vector<CouponResult>& tried) {
    for (const CouponResult& coupon : tried) {
        if (!coupon.counts) continue;
        ++(coupon.trial ? chance.trials : chance.coupons);
        chance.lowest = chance.lowest > 0 ? std::min(chance.lowest, coupon.strain) : coupon.strain;
        chance.mean += coupon.strain;
    }
    if (chance.counted()) chance.mean /= chance.coupons + chance.trials;
    return chance;
}

/// What is known of the board without its coupons, with the first of them, and so on; with all of them it is `wood`.
tl::expected<std::vector<Wood>, job::Diagnostics> woods_of(const Request& wanted, const Wood& wood,
                                                           const job::Job& job) {
    std::vector<Wood> woods;
    job::Board board = *wanted.wanted;
    for (const job::Coupon& next : std::exchange(board.coupons, {})) {
        auto known = wood_of(board, wanted.bend->spots.front().on, wanted.across_grain(), job);
        if (!known) return tl::unexpected(std::move(known).error());
        woods.push_back(std::move(known->wood));
        board.coupons.push_back(next);
    }
    woods.push_back(wood);
    return woods;
}

/// What the job asks.
tl::expected<Settled, job::Diagnostics> settled(const Request& wanted, const Wood& wood, const job::Job& job) {
    const auto woods = woods_of(wanted, wood, job);
    if (!woods) return tl::unexpected(woods.error());
    auto found = settle(wanted, *woods, job);
    if (!found && found.error().empty()) return tl::unexpected(nothing_works(wanted, wood, job));
    if (!found) return found;
    // The marks of a splayed board are a template, which always has room for them.
    if (!wanted.splay)
        if (auto wrong = check_strips(wanted.id, found->laid.cut, found->laid.blank, *wanted.wanted, job);
            !wrong.empty())
            return tl::unexpected(std::move(wrong));
    found->settings = with_neighbours(*found, wanted, wood, job);
    return found;
}

job::Diagnostics kerfs_for_two_boards(const Request& wanted) {
    if (wanted.boards == 1 || wanted.wanted->kerfs.empty()) return {};
    return {{job::Severity::error, wanted.wanted->kerfs.front().at,
             say("two_boards", "a head with a point is lined by two boards: kerfs cannot be given for both"),
             say("two_boards_do", R"(give a spacing, or leave it to "solve")")}};
}

/// Kerfs further askew than the saw turns, or longer than its slide goes.
job::Diagnostics beyond_saw(const Request& wanted, const Rake& rake, const AtSaw& at_saw, const job::Job& job) {
    const auto text = [&](Length length) { return job::shown(length, job.header.units); };
    const auto refused = [](job::Position at, job::Told message, job::Told hint) {
        return job::Diagnostics{{job::Severity::error, at, std::move(message), std::move(hint)}};
    };
    const auto degrees = [](Angle angle) { return job::figure(measure::fixed(angle.degrees(), 1)); };
    // As a saw's scale is read, and as both are told: to a tenth of a degree.
    const auto tenths = [](Angle angle) { return std::lround(angle.degrees() * 10); };
    if (job.saw.mitre_limit && tenths(rake.kerf()) > tenths(job.saw.mitre_limit->value))
        return refused(
            wanted.climbs->at,
            say("askew_beyond", "the kerfs of {piece} stand {angle} degrees from square, and the saw cuts to {limit}",
                {{"piece", wanted.id},
                 {"angle", degrees(rake.kerf())},
                 {"limit", degrees(job.saw.mitre_limit->value)}}),
            say("askew_beyond_do",
                "would do: a saw on a rail that is set by the marks, one stroke a kerf, or a wall that "
                "climbs less steeply"));
    if (job.saw.travel && at_saw.travel_needed && *at_saw.travel_needed > job.saw.travel->value)
        return refused(
            job.saw.travel->at.line > 0 ? job.saw.travel->at : wanted.climbs->at,
            say("askew_long",
                "the kerfs of {piece} are {cut} long, which needs {needed} of travel: the slide has {travel}",
                {{"piece", wanted.id},
                 {"cut", text(rake.cut())},
                 {"needed", text(*at_saw.travel_needed)},
                 {"travel", text(job.saw.travel->value)}}),
            say("askew_long_do", "would do: a slide of that travel, a saw on a rail, or a board at most {width} wide",
                {{"width", text(at_saw.width_reached.value_or(job.saw.travel->value * rake.cosine()))}}));
    return {};
}

/// Everything of a piece that can be refused.
struct Accepted {
    CouponedWood known;
    Settled found;
    Spliced spliced;
    std::vector<DeepKerf> deep;
    AtSaw saw;
};

tl::expected<Accepted, job::Diagnostics> accepted(const Request& wanted, const job::Job& job) {
    const job::Board& board = *wanted.wanted;
    if (auto slip = kerfs_for_two_boards(wanted); !slip.empty()) return tl::unexpected(std::move(slip));
    auto known = wood_of(board, wanted.bend->spots.front().on, wanted.across_grain(), job);
    if (!known) return tl::unexpected(std::move(known).error());
    auto found = settled(wanted, known->wood, job);
    if (!found) return tl::unexpected(std::move(found).error());
    auto spliced = splice(wanted, found->laid, known->wood, job);
    if (!spliced) return tl::unexpected(std::move(spliced).error());
    auto deep = deep_kerfs(spliced->laid, wanted, known->wood.material, job.header.units);
    if (!deep) return tl::unexpected(std::move(deep).error());
    const AtSaw saw = at_saw(spliced->laid, board, job.saw, job.header.units);
    if (const auto& rake = spliced->laid.rake)
        if (auto slip = beyond_saw(wanted, *rake, saw, job); !slip.empty()) return tl::unexpected(std::move(slip));
    return Accepted{*std::move(known), *std::move(found), *std::move(spliced), *std::move(deep), saw};
}

}  // namespace

tl::expected<Piece, job::Diagnostics> make_piece(const Request& wanted, const job::Job& job) {
    auto all = accepted(wanted, job);
    if (!all) return tl::unexpected(std::move(all).error());
    const auto& [known, found, spliced, deep, saw] = *all;
    const std::optional<std::size_t> worst = governing_deep(spliced.laid.bend, deep);
    const job::Board& board = *wanted.wanted;
    const measure::Unit unit = job.header.units;
    const Laid& laid = spliced.laid;
    const bend::Material& material = known.wood.material;
    const Kerf& kerf = laid.governing_kerf();
    const bend::Cell cell = laid.cut.cell(kerf.spacing);
    constexpr double told_moisture = 5;
    return Piece{
        .id = wanted.id,
        .kind = wanted.kind,
        .board = wanted.board,
        .boards = wanted.boards,
        .quantity = wanted.quantity,
        .measured_to = wanted.measured_to,
        .side = wanted.side,
        .shape = wanted.shape,
        .measured_span = wanted.span,
        .measured_rise = wanted.rise,
        .rake = laid.rake,
        .splay = laid.splay,
        .material = board.material.value,
        .own_material = is_own(board.material.value, job),
        .grain = material.may_split,
        .width = laid.splay ? measure::up_to_tape(laid.splay->sawn_width(), unit) : board.width.value,
        .tick = board.tick,
        .strip = board.strip.value,
        .cut = laid.cut,
        .gaps = gaps_of(laid, spliced.joints),
        .settings = found.settings,
        .whole = laid.splay ? boxed(laid.blank, *laid.splay, unit) : laid.blank,
        .joints = spliced.joints,
        .blanks = boxed(spliced.blanks, laid, unit),
        .circular = laid.circular,
        .kerfs_on = laid.kerfs_on,
        .turn = laid.turn,
        .radii = laid.radii,
        .governing = laid.governing,
        .bend = with_verdict(laid.bend, worst ? std::max(deep[*worst].now, laid.bend.verdict) : laid.bend.verdict),
        .saw = saw,
        .weak_links = weak_links(laid, spliced.joints),
        .sensitivity = bend::sensitivity(cell, material, kerf.on, laid.radii.line, small_errors(unit)),
        .overcut_limits = bend::overcut_limits(cell, material, kerf.on, laid.radii.line, small_errors(unit).depth),
        .deep_kerfs = deep,
        .governing_deep = worst,
        .limit_curves = limit_curves(laid.cut, kerf.on, material, unit),
        .coupon = known.coupon,
        .tried = known.tried,
        .chance = with_coupons(chance_with_levels(laid, wanted, known.wood, job), known.tried),
        .moulded_use = laid.cut.moulded() ? bend::moulded_utilisation(cell, material, kerf.on, laid.radii.line)
                                          : std::array<double, 2>{},
        .solid_utilisation = solid_utilisation(laid, material),
        .springs_back = bend::stiffness_ratio(cell, material.softness),
        .moisture_move = laid.blank.length * (material.movement * told_moisture),
    };
}

}  // namespace kerfpacket::plan
