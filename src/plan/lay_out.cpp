#include "plan/lay_out.h"

#include <algorithm>
#include <cmath>

#include "bend/spacing.h"
#include "plan/checks.h"
#include "plan/judge.h"
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

/// One arc and nothing else.
bool is_one_arc(const curve::Curve& curve) {
    return curve.is_exact_path() && curve.joints().size() == 2 && !curve.path().segments().front().is_line();
}

/// Where the bend is sharpest, before its kerfs are known.
struct Sharpest {
    bool circular = true;
    bend::KerfsOn on = bend::KerfsOn::outside;
    Length measured;
    Length finish;
};

Sharpest sharpest(const Request& wanted) {
    const TightSpot spot = tight_spots(wanted).front();
    return {is_one_arc(wanted.bent()), spot.on, spot.measured_radius,
            spot.plain_radius(wanted.measured_to, wanted.wanted->thickness.value)};
}

/// Where the kerfs of a cut stand on the blank.
struct Placed {
    Cutting cut;
    Unrolled board;
    Blank blank;
    std::vector<Length> places;  ///< middles, from zero
};

class Placing {
public:
    Placing(const Request& wanted, const Cut& cut, const Cutting& cutting, const Sharpest& sharpest,
            const bend::Material& material)
        : wanted_(wanted), cut_(cut), cutting_(cutting), sharpest_(sharpest), material_(material) {}

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
        bend::SpacingSearch search(cutting_.cell(cut_.most), material_, sharpest_.on, cut_.least, cut_.most);
        for (int pass = 0; pass < 3; ++pass) {
            const Length below_face = bend::length_keeping_depth(cutting_.cell(spacing), material_.softness);
            const Length radius = (sharpest_.finish + below_face * outward(sharpest_.on)) * (1 - cut_.tighter);
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
    Length mean_below_face() const {
        const Length usual = usual_depth_of(cutting_);
        const curve::Curve line =
            wanted_.bent().parallel(faces(wanted_.measured_to, cutting_.thickness).finish + usual);
        const std::vector<Length> spacings = local_spacings(cutting_, line, {}, line.length(), material_, cut_);
        Length sum;
        double turn = 0;
        const Length step = line.length() / static_cast<double>(spacings.size() - 1);
        for (std::size_t i = 0; i < spacings.size(); ++i) {
            const double bent = std::abs(line.at(step * static_cast<double>(i)).curvature);
            sum += bend::length_keeping_depth(cutting_.cell(spacings[i]), material_.softness) * bent;
            turn += bent;
        }
        return turn > 0 ? sum / turn : usual;
    }

    Placed on_curve() const {
        const Placed placed = bare(cutting_, mean_below_face());
        return with(placed, solved_places(placed.blank, placed.board, cutting_, material_, cut_));
    }

    const Request& wanted_;
    const Cut& cut_;
    const Cutting& cutting_;
    const Sharpest& sharpest_;
    const bend::Material& material_;
};

/// Radii at the kerf that governs.
Radii radii(const Request& wanted, const Sharpest& sharpest, const Unrolled& board, const Judged& judged,
            Length thickness) {
    Radii radii{sharpest.measured, sharpest.measured + faces(wanted.measured_to, thickness).wall * outward(sharpest.on),
                sharpest.finish, judged.line_radius};
    const auto governing = std::find_if(judged.kerfs.begin(), judged.kerfs.end(),
                                        [&](const Kerf& kerf) { return kerf.radius == judged.line_radius; });
    if (sharpest.circular || governing == judged.kerfs.end()) return radii;
    radii.finish = judged.line_radius - board.below_face * outward(governing->on);
    radii.wall = radii.finish + thickness * outward(governing->on);
    return radii;
}

/// Once a coupon or a trial counts, the chance is judged beside the strain.
bend::Assessment judged_by_chance(bend::Assessment bend, double breaks) {
    const bend::Verdict verdict = bend::chance_verdict(breaks);
    if (verdict == bend::Verdict::break_likely) bend.concerns.push_back(bend::Concern::chance_break);
    else if (verdict == bend::Verdict::caution) bend.concerns.push_back(bend::Concern::chance_caution);
    bend.verdict = std::max(bend.verdict, verdict);
    return bend;
}

}  // namespace

tl::expected<Laid, job::Diagnostics> lay_out(const Request& wanted, const Cut& cut, const Wood& wood,
                                             const job::Job& job) {
    const job::Board& asked = *wanted.wanted;
    const Sharpest sharp = sharpest(wanted);
    const Cutting meant = cutting(asked, cut, wood, job.saw);
    Placed placed = Placing(wanted, cut, meant, sharp, wood.material).run();
    const job::Diagnostics wrong = check_kerfs(placed.blank, placed.cut, placed.places.size(), asked, job);
    if (!wrong.empty()) return tl::unexpected(wrong);
    const bool evenly_told = !placed.cut.kerfs_given && (sharp.circular || placed.cut.spacing_given);
    const Cutting made = evenly_told ? placed.cut : with_gaps(placed.cut, placed.places);
    const Bending bending{sharp.circular, sharp.finish + placed.board.below_face * outward(sharp.on)};
    Judged judged = judge(placed.places, asked.tick, placed.blank, placed.board, made, bending, wood.material);
    const Radii at = radii(wanted, sharp, placed.board, judged, made.thickness);
    placed.blank.kerfs = std::move(judged.kerfs);
    std::optional<Rake> rake = placed.board.rake;
    if (rake) rake->grain = wood.material.may_split;
    Laid laid{.cut = made,
              .blank = rake ? askew(std::move(placed.blank), *rake) : std::move(placed.blank),
              .rake = rake,
              .circular = sharp.circular,
              .kerfs_on = sharp.on,
              .turn = placed.board.turn,
              .radii = at,
              .governing = judged.governing,
              .bend = judged.bend};
    // Many are laid out before one is taken: the chance is reckoned here only where it counts for the verdict.
    if (wood.known.counted() > 0)
        laid.bend = judged_by_chance(std::move(laid.bend), chance_of(laid, wanted, wood, job).breaks);
    return laid;
}

}  // namespace kerfpacket::plan
