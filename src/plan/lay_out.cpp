#include "plan/lay_out.h"

#include <algorithm>
#include <cmath>

#include "bend/spacing.h"
#include "bend/yield.h"
#include "plan/checks.h"
#include "plan/kerfs.h"

namespace kerfpacket::plan {
namespace {

Cutting cutting(const job::Board& board, const Cut& cut, const Wood& wood, const job::Saw& saw) {
    return {
        .thickness = board.thickness.value,
        .depth = cut.depth,
        .kerf = saw.kerf.value,
        .spacing = cut.most,
        .least_spacing = cut.most,
        .hinge_part = wood.hinge_part,
        .plies = plies_of(board),
        .profile = profile_of(board),
        .profile_told = !board.least_thickness.has_value(),
        .depth_given = board.kerf_depth.given.has_value() || board.kerf_depth.half,
        .spacing_given = cut.kerfs != Cut::Kerfs::solved,
        .kerfs_given = cut.kerfs == Cut::Kerfs::by_hand,
    };
}

/// The same with its kerfs evenly that far apart.
Cutting evenly(Cutting cut, Length spacing) {
    cut.spacing = spacing;
    cut.least_spacing = spacing;
    return cut;
}

/// The same with the gaps that its kerfs came to, unless a spacing told them.
Cutting with_gaps(Cutting cut, const std::vector<Length>& places) {
    if (places.size() < 2) return cut;
    cut.spacing = places[1] - places[0];
    cut.least_spacing = cut.spacing;
    for (std::size_t i = 2; i < places.size(); ++i) {
        const Length gap = places[i] - places[i - 1];
        cut.spacing = std::max(cut.spacing, gap);
        cut.least_spacing = std::min(cut.least_spacing, gap);
    }
    return cut;
}

/// Where the bend is sharpest, before its kerfs are known.
struct Sharpest {
    bool circular = true;
    TightSpot spot;
    Length finish;  ///< about which the plain face bends
    Length line_radius(const Request& wanted, Length below_face) const {
        return spot.line_radius(wanted.measured_to, wanted.wanted->thickness.value, below_face);
    }
};

Sharpest sharpest(const Request& wanted) {
    const TightSpot& spot = wanted.bend->spots.front();
    return {wanted.bend->circular, spot, spot.plain_radius(wanted.measured_to, wanted.wanted->thickness.value)};
}

/// Where the kerfs of a cut stand on the blank.
struct Placed {
    Cutting cut;
    Unrolled board;
    Blank blank;
    std::vector<Length> places;  ///< middles, from zero
};

/// What cuts that differ only in how much tighter a bend they allow for have in common: the first finds it out.
struct Common {
    std::optional<SpacingByBend> allowed;
    std::optional<Bends> bends;  ///< of the line that keeps its length where kerfs stand as far apart as they may
};

class Placing {
public:
    Placing(const Request& wanted, const Cut& cut, const Cutting& cutting, const Sharpest& sharpest,
            const bend::Material& material, Common& common)
        : wanted_(wanted), cut_(cut), cutting_(cutting), sharpest_(sharpest), material_(material), common_(common) {}

    Placed run() const {
        if (cut_.kerfs == Cut::Kerfs::solved) return sharpest_.circular ? on_arc() : on_curve();
        const Placed placed = bare(cutting_, usual_depth_of(cutting_));
        return with(placed, cut_.kerfs == Cut::Kerfs::by_hand ? given() : even_places(placed.blank, cutting_));
    }

private:
    Length usual_depth_of(const Cutting& cut) const {
        return bend::length_keeping_depth(cut.cell(cut.spacing), material_.softness);
    }

    /// Without kerfs.
    Placed bare(const Cutting& cut, Length below_face) const {
        Unrolled board = unroll(wanted_, below_face);
        Blank blank = counted_from_zero(board, wanted_.wanted->zero);
        return {cut, std::move(board), std::move(blank), {}};
    }

    static Placed with(Placed placed, std::vector<Length> places) {
        placed.places = std::move(places);
        return placed;
    }

    std::vector<Length> given() const {
        std::vector<Length> places;
        for (const auto& place : wanted_.wanted->kerfs) places.push_back(place.value);
        return places;
    }

    /// The widest spacing that is ok at the radius of an arc, which depends a little on the spacing itself.
    Length arc_spacing() const {
        Length spacing = cut_.most;
        bend::SpacingSearch search(cutting_.cell(cut_.most), material_, sharpest_.spot.on, cut_.least, cut_.most);
        for (int pass = 0; pass < 3; ++pass) {
            const Length below_face = bend::length_keeping_depth(cutting_.cell(spacing), material_.softness);
            const Length radius = sharpest_.line_radius(wanted_, below_face) * (1 - cut_.tighter);
            spacing = search.widest(radius);
        }
        return spacing;
    }

    Placed on_arc() const {
        const Cutting widest = evenly(cutting_, arc_spacing());
        Placed first = bare(widest, usual_depth_of(widest));
        // A whole number of kerfs stands a little closer, which moves the line that keeps its length by a hair.
        const ArcKerfs kerfs = arc_kerfs(first.blank, first.board, widest);
        // On a bend as short as this the blade would leave no wood between them: that is told as no kerf at all.
        if (kerfs.count < 1 || kerfs.spacing <= widest.kerf) return first;
        const Cutting closer = evenly(cutting_, kerfs.spacing);
        Placed placed = bare(closer, usual_depth_of(closer));
        placed.cut = evenly(cutting_, arc_gap(placed.blank, placed.board, closer, kerfs.count));
        placed.places = arc_places(placed.blank, placed.board, closer, kerfs.count);
        return placed;
    }

    /// How far the line that keeps its length stands from the plain face. Where the spacing varies that is not the same
    /// everywhere: the mean over the turn holds for the whole board, within a few thousandths of an inch.
    Length mean_below_face(SpacingByBend& allowed) const {
        const Length usual = usual_depth_of(cutting_);
        if (allowed.alike()) return usual;
        if (!common_.bends) {
            const curve::Curve line = wanted_.bent_line(usual);
            common_.bends = bends_along(line, {}, line.length());
        }
        const std::vector<double>& curvatures = common_.bends->curvatures;
        const std::vector<Length> spacings = local_spacings(allowed, *common_.bends);
        bend::AtSpacings kerfs(cutting_.cell(cutting_.spacing), material_.softness);
        Length sum, here;
        double turn = 0;
        for (std::size_t i = 0; i < spacings.size(); ++i) {
            if (i == 0 || spacings[i] != spacings[i - 1]) here = kerfs.at(spacings[i]).length_keeping_depth();
            const double bent = std::abs(curvatures[i]);
            sum += here * bent;
            turn += bent;
        }
        return turn > 0 ? sum / turn : usual;
    }

    Placed on_curve() const {
        if (!common_.allowed) common_.allowed.emplace(cutting_, material_, cut_);
        SpacingByBend& allowed = *common_.allowed;
        allowed.allow_for(cut_.tighter);
        const Placed placed = bare(cutting_, mean_below_face(allowed));
        return with(placed, solved_places(placed.blank, placed.board, cutting_, allowed));
    }

    const Request& wanted_;
    const Cut& cut_;
    const Cutting& cutting_;
    const Sharpest& sharpest_;
    const bend::Material& material_;
    Common& common_;
};

/// Radii at the kerf that governs, and the least of the seen face.
Radii radii(const Request& wanted, const Sharpest& sharpest, const Unrolled& board, const Judged& judged,
            Length thickness) {
    const Length measured = sharpest.spot.measured_radius;
    Radii radii{measured, measured + wanted.faces().wall * outward(sharpest.spot.on), sharpest.finish,
                judged.line_radius, sharpest.finish};
    const auto governing = std::find_if(judged.kerfs.begin(), judged.kerfs.end(),
                                        [&](const Kerf& kerf) { return kerf.radius == judged.line_radius; });
    if (sharpest.circular || governing == judged.kerfs.end()) return radii;
    const auto seen = [&](const Kerf& kerf) {
        return kerf.radius - wanted.deeper(board.below_face) * outward(kerf.on);
    };
    radii.finish = seen(*governing);
    radii.wall = radii.finish + thickness * outward(governing->on);
    radii.tightest = radii.finish;
    for (const Kerf& kerf : judged.kerfs)
        if (kerf.radius > Length()) radii.tightest = std::min(radii.tightest, seen(kerf));
    return radii;
}

/// Left and right are those of whoever saws. The narrow edge of a splayed blank lies toward him: where the wide one is
/// at the room, he stands the other way round.
job::Tick tick_at_saw(const Request& wanted) {
    const job::Tick tick = wanted.wanted->tick;
    const bool turned = wanted.splay && wanted.splay->room > wanted.splay->narrow;
    if (!turned || tick == job::Tick::centre) return tick;
    return tick == job::Tick::left ? job::Tick::right : job::Tick::left;
}

/// Counted along the blank, from its left.
LegCut on_blank(LegCut cut, const Unrolled& board) {
    for (std::vector<Length>* face : {&cut.seen, &cut.kerf})
        for (Length& at : *face) at = board.from_left(board.measured.on_parallel(at - board.starts_at, board.left));
    return cut;
}

Splay splay_of(const Request& wanted, const Unrolled& board) {
    const curve::Curve line = board.measured.parallel(board.left);
    const job::Board& asked = *wanted.wanted;
    std::array<std::optional<LegCut>, 2> cuts{};
    for (std::size_t i = 0; i < cuts.size(); ++i)
        if (wanted.ends[i].leg_cut) cuts[i] = on_blank(*wanted.ends[i].leg_cut, board);
    return {.alpha = wanted.splay->alpha,
            .wide_at_room = wanted.splay->room > wanted.splay->narrow,
            .narrow_measured = wanted.splay->narrow == Length(),
            .depth = asked.width.value,
            .thickness = asked.thickness.value,
            .below_face = board.below_face,
            .line = line.part(-board.origin, line.length() + (board.length - board.bend_end())),
            .trims = board.trims,
            .leg_cuts = std::move(cuts)};
}

/// Once a coupon or a trial counts, the chance is judged beside the strain.
bend::Assessment judged_by_chance(bend::Assessment bend, double breaks) {
    const bend::Verdict verdict = bend::chance_verdict(breaks);
    if (verdict == bend::Verdict::break_likely) bend.concerns.push_back(bend::Concern::chance_break);
    else if (verdict == bend::Verdict::caution) bend.concerns.push_back(bend::Concern::chance_caution);
    bend.verdict = std::max(bend.verdict, verdict);
    return bend;
}

/// Nothing, and sooner, where it has a concern that may not stand. The kerfs stand where they do in the wood `then`.
tl::expected<std::optional<Laid>, job::Diagnostics> lay_out_if(const Request& wanted, const Cut& cut, const Wood& then,
                                                               const Wood& wood, const job::Job& job,
                                                               const MayStand& may_stand, Common& common) {
    const job::Board& asked = *wanted.wanted;
    const Sharpest sharp = sharpest(wanted);
    const Cutting meant = cutting(asked, cut, then, job.saw);
    Placed placed = Placing(wanted, cut, meant, sharp, then.material, common).run();
    placed.cut.hinge_part = wood.hinge_part;
    const job::Diagnostics wrong = check_kerfs(placed.blank, placed.cut, placed.places.size(), asked, job);
    if (!wrong.empty()) return tl::unexpected(wrong);
    const bool evenly_told = !placed.cut.kerfs_given && (sharp.circular || placed.cut.spacing_given);
    const Cutting made = evenly_told ? placed.cut : with_gaps(placed.cut, placed.places);
    const Bending bending{sharp.circular, sharp.line_radius(wanted, placed.board.below_face)};
    auto judged =
        judge(placed.places, tick_at_saw(wanted), placed.blank, placed.board, made, bending, wood.material, may_stand);
    if (!judged) return std::nullopt;
    const Radii at = radii(wanted, sharp, placed.board, *judged, made.thickness);
    placed.blank.kerfs = std::move(judged->kerfs);
    std::optional<Rake> rake = placed.board.rake;
    if (rake) rake->grain = wood.material.may_split;
    std::optional<Splay> splay;
    if (wanted.splay) splay = splay_of(wanted, placed.board);
    std::optional<Blank> square;
    if (rake) square = placed.blank;
    Laid laid{.asked = cut,
              .cut = made,
              .blank = rake ? askew(std::move(placed.blank), *rake) : std::move(placed.blank),
              .rake = rake,
              .square = std::move(square),
              .splay = std::move(splay),
              .circular = sharp.circular,
              .kerfs_on = sharp.spot.on,
              .turn = placed.board.turn,
              .radii = at,
              .governing = judged->governing,
              .bend = std::move(judged->bend)};
    // Many are laid out before one is taken: the chance is reckoned here only where it counts for the verdict.
    if (wood.known.counted() > 0)
        laid.bend = judged_by_chance(std::move(laid.bend), chance_of(laid, wanted, wood, job).breaks);
    const std::vector<bend::Concern>& concerns = laid.bend.concerns;
    if (may_stand && !std::all_of(concerns.begin(), concerns.end(), may_stand)) return std::nullopt;
    return laid;
}

}  // namespace

tl::expected<std::optional<Laid>, job::Diagnostics> lay_out_first(const Request& wanted, std::span<const Cut> cuts,
                                                                  const Wood& wood, const job::Job& job,
                                                                  const MayStand& may_stand, OrElse otherwise) {
    Common common;
    for (const Cut& cut : cuts) {
        const bool as_it_is = otherwise == OrElse::the_last && &cut == &cuts.back();
        auto laid = lay_out_if(wanted, cut, wood, wood, job, as_it_is ? MayStand() : may_stand, common);
        if (!laid || *laid) return laid;
    }
    return std::nullopt;
}

tl::expected<Laid, job::Diagnostics> lay_out(const Request& wanted, const Cut& cut, const Wood& wood,
                                             const job::Job& job) {
    return lay_out_again(wanted, cut, wood, wood, job);
}

tl::expected<Laid, job::Diagnostics> lay_out_again(const Request& wanted, const Cut& cut, const Wood& then,
                                                   const Wood& now, const job::Job& job) {
    Common common;
    auto laid = lay_out_if(wanted, cut, then, now, job, {}, common);
    if (!laid) return tl::unexpected(std::move(laid).error());
    return **std::move(laid);
}

}  // namespace kerfpacket::plan
