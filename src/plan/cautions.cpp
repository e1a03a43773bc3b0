#include "plan/cautions.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "bend/section.h"
#include "job/shapes.h"
#include "measure/require.h"
#include "plan/kerfs.h"

namespace kerfpacket::plan {
namespace {

using bend::Concern;

/// Radius of the line at the kerf that closes first.
Length closing_at(const Piece& piece) {
    Length least = piece.bend_radius;
    for (const Kerf& kerf : piece.kerfs)
        if (kerf.on == bend::KerfsOn::inside && kerf.radius.mm() > 0) least = std::min(least, kerf.radius);
    return least;
}

Caution of_chance(Concern concern, int one_in) {
    if (one_in == 1) return {"chance_break_most", {}};
    return {concern == Concern::chance_break ? "chance_break" : "chance_caution", {{"n", one_in}}};
}

Caution of_concern(Concern concern, const Piece& piece) {
    switch (concern) {
        case Concern::strain_caution: return {"strain_caution", {{"u", piece.bend.utilisation}}};
        case Concern::strain_break:
            return {"strain_break", {{"u", piece.bend.utilisation}, {"least_radius", piece.bend.least_radius}}};
        case Concern::chance_caution:
        case Concern::chance_break: return of_chance(concern, bend::one_in(piece.chance.breaks));
        case Concern::closes_before_bend:
            return {"closes_before_bend", {{"close_radius", piece.bend.close_radius}, {"radius", closing_at(piece)}}};
        case Concern::nearly_closes:
            return {"nearly_closes", {{"close_radius", piece.bend.close_radius}, {"radius", closing_at(piece)}}};
        case Concern::facet_visible: return {"facet_visible", {{"facet", piece.bend.facet}}};
        case Concern::grain_may_split: return {"grain_may_split", {}};
        case Concern::web_thin: return {"web_thin", {{"web", piece.web()}}};
        case Concern::depth_out_of_range:
            return {"depth_out_of_range", {{"ratio", piece.kerf_depth / piece.thickness}}};
        case Concern::kerf_out_of_range: return {"kerf_out_of_range", {{"ratio", piece.kerf / piece.thickness}}};
        case Concern::spacing_out_of_range:
            return {"spacing_out_of_range", {{"ratio", piece.spacing / piece.thickness}}};
        case Concern::land_out_of_range: return {"land_out_of_range", {{"ratio", piece.kerf / piece.spacing}}};
    }
    throw measure::Bug("a concern without a caution");
}

std::optional<Caution> of_stock(const Piece& piece, const job::Stock& stock) {
    const auto longest = std::max_element(stock.lengths.begin(), stock.lengths.end(),
                                          [](const auto& a, const auto& b) { return a.value < b.value; });
    if (longest == stock.lengths.end() || piece.blank_length <= longest->value) return std::nullopt;
    return Caution{"blank_longer_than_stock", {{"blank", piece.blank_length}, {"stock", longest->value}}};
}

/// A board wider than the slide reaches can be turned for the rest, up to twice that width.
std::optional<Caution> of_travel(const Piece& piece, const job::Saw& saw) {
    if (!saw.travel || !piece.travel_needed || *piece.travel_needed <= saw.travel->value) return std::nullopt;
    const Length reached = piece.width_reached.value_or(saw.travel->value);
    const char* key = reached * 2 >= piece.width ? "travel_short" : "travel_far_short";
    return Caution{key, {{"needed", *piece.travel_needed}, {"travel", saw.travel->value}, {"reached", reached}}};
}

/// Where the last kerf before a mitre stands much further from it than kerfs do, that end stays straight.
std::optional<Caution> of_mitre(const Piece& piece) {
    Length widest;
    for (std::size_t i = 0; i < 2; ++i) {
        const BoardEnd& end = piece.ends[i];
        if (end.mitre.radians() == 0 || piece.kerfs.empty()) continue;
        const Length nearest = i == 0 ? piece.kerfs.front().at : piece.kerfs.back().at;
        widest = std::max({widest, measure::abs(nearest - end.kerf_face)});
    }
    if (widest <= piece.spacing * 2) return std::nullopt;
    return Caution{"mitre_kerf_gap", {{"gap", widest}}};
}

/// "12", "12, 40 and 7 more".
std::string numbers(const std::vector<int>& all) {
    constexpr std::size_t most = 6;
    std::string text;
    for (std::size_t i = 0; i < std::min(all.size(), most); ++i) text += (i > 0 ? ", " : "") + std::to_string(all[i]);
    return all.size() > most ? text + " +" + std::to_string(all.size() - most) : text;
}

std::optional<Caution> of_gaps(const Piece& piece) {
    if (piece.weak_links.empty()) return std::nullopt;
    double worst = 1;
    for (const int n : piece.weak_links) {
        const auto i = static_cast<std::size_t>(n - 1);
        const double ratio = (piece.kerfs[i + 1].at - piece.kerfs[i].at) / (piece.kerfs[i].at - piece.kerfs[i - 1].at);
        worst = std::max({worst, ratio, 1 / ratio});
    }
    return Caution{"gap_ratio", {{"n", numbers(piece.weak_links)}, {"ratio", worst}}};
}

/// A bend that goes on beyond the last kerf given by hand, more than half a gap.
std::optional<Caution> of_bare_ends(const Piece& piece) {
    if (!piece.kerfs_given || piece.kerfs.size() < 2) return std::nullopt;
    const std::size_t n = piece.kerfs.size();
    const Length before = piece.kerfs.front().at - piece.bend_start;
    const Length after = piece.bend_end - piece.kerfs.back().at;
    const Length bare = std::max(before - (piece.kerfs[1].at - piece.kerfs[0].at) / 2,
                                 after - (piece.kerfs[n - 1].at - piece.kerfs[n - 2].at) / 2);
    if (bare < Length::mm(0.5)) return std::nullopt;
    return Caution{"bend_without_kerfs", {{"length", std::max(before, after)}}};
}

/// Depth and spacing as they came about, where that wants care.
std::optional<Caution> of_settings(const Piece& piece) {
    if (piece.settings.rule == Rule::least_strain) {
        if (piece.depth_given) return Caution{"nothing_ok_at_this_depth", {}};
        if (!piece.settings.ok_from) return Caution{"nothing_is_ok", {}};
        return Caution{"nothing_ok_at_this_radius", {{"radius", *piece.settings.ok_from}}};
    }
    if (piece.settings.rule != Rule::given || !piece.settings.solved) return std::nullopt;
    const Choice& better = *piece.settings.solved;
    if (better.verdict >= piece.bend.verdict) return std::nullopt;
    return Caution{"solve_would_do", {{"depth", better.depth}, {"kerfs", better.kerfs}, {"u", better.utilisation}}};
}

/// Plywood cut to a depth that ends in a ply along the board.
std::optional<Caution> of_plies(const Piece& piece) {
    if (bend::ends_well(piece.cell(piece.spacing))) return std::nullopt;
    if (!piece.settings.cross_ply) return Caution{"ends_in_ply_along", {}};
    const Choice& better = *piece.settings.cross_ply;
    if (better.verdict == bend::Verdict::break_likely)
        return Caution{"ends_in_ply_along_no_better", {{"depth", better.depth}}};
    return Caution{"ends_in_ply_along_better",
                   {{"depth", better.depth}, {"kerfs", better.kerfs}, {"u", better.utilisation}}};
}

/// Kerfs that were cut too deep, the worst first: what the board is worth now hangs on them.
void add_deep_kerfs(std::vector<Caution>& cautions, const Piece& piece) {
    constexpr std::array keys{"", "kerf_to_ease", "kerf_to_fill", "kerf_scraps_the_board"};
    for (const bend::Mend mend : {bend::Mend::scrap, bend::Mend::fill, bend::Mend::ease}) {
        std::vector<int> kerfs;
        for (const DeepKerf& kerf : piece.deep_kerfs)
            if (kerf.answer.mend == mend) kerfs.push_back(kerf.n);
        if (!kerfs.empty()) cautions.push_back({keys.at(static_cast<std::size_t>(mend)), {{"n", numbers(kerfs)}}});
    }
}

/// A coupon that tells less than it might.
void add_coupon(std::vector<Caution>& cautions, const Piece& piece) {
    if (!piece.coupon) return;
    const CouponResult& coupon = *piece.coupon;
    constexpr Length flat = Length::inches(1);
    const Kerf& kerf = piece.kerfs.at(static_cast<std::size_t>(piece.governing - 1));
    const bool other = measure::abs(coupon.depth - piece.kerf_depth) > Length::inches(1.0 / 64) ||
                       measure::abs(coupon.spacing - kerf.spacing) > Length::inches(1.0 / 16);
    if (other) cautions.push_back({"coupon_other_settings", {{"depth", coupon.depth}, {"spacing", coupon.spacing}}});
    if (coupon.coupon.rise < flat - Length::mm(0.01))
        cautions.push_back({"coupon_flat", {{"rise", coupon.coupon.rise}, {"error", coupon.error * 100}}});
    if (coupon.counts && coupon.times_table > 1.2)
        cautions.push_back({"coupon_above_table", {{"times", coupon.times_table}}});
    if (coupon.outcome == job::Outcome::held && coupon.strain < piece.bend.strain)
        cautions.push_back({"coupon_held_less", {{"part", coupon.strain / piece.bend.strain}}});
}

/// Where a curve of many radii is tightest, when that is what the verdict hangs on.
std::optional<Caution> of_tight_spot(const Piece& piece) {
    if (piece.circular || piece.bend.verdict == bend::Verdict::ok) return std::nullopt;
    for (const Kerf& kerf : piece.kerfs)
        if (kerf.radius == piece.bend_radius)
            return Caution{"tight_spot", {{"radius", piece.finish_radius}, {"at", kerf.at}}};
    return std::nullopt;
}

void add(std::vector<Caution>& cautions, std::optional<Caution> caution) {
    if (caution) cautions.push_back(std::move(*caution));
}

/// Radii that the program chose are told, for they stand nowhere in the job. On even springs both halves have the same.
void add_tudor_radii(Piece& piece, const curve::Head& head, const job::Opening& opening) {
    const bool even = !opening.legs || (*opening.legs)[0].value == (*opening.legs)[1].value;
    if (!even || (opening.side_radius && opening.crown_radius)) return;
    const geom::Path side = head.outline.runs().at(1).path();
    const auto& arcs = side.segments();
    piece.cautions.push_back({"tudor_radii", {{"side", arcs.front().radius()}, {"crown", arcs.back().radius()}}});
}

/// The gap in which a fair curve turns most, of each half of the points; elsewhere more points do less.
std::vector<curve::Survey::Gap> worst_gaps(const curve::Survey& survey) {
    std::vector<curve::Survey::Gap> worst;
    for (const bool left : {true, false}) {
        const curve::Survey::Gap* found = nullptr;
        for (const curve::Survey::Gap& gap : survey.gaps) {
            if ((2 * gap.after + 2 <= survey.points.size()) != left) continue;
            if (found == nullptr || std::abs(gap.turn.radians()) > std::abs(found->turn.radians())) found = &gap;
        }
        if (found != nullptr) worst.push_back(*found);
    }
    return worst;
}

}  // namespace

Length to_hundredths(Length value) { return Length::inches(std::round(std::abs(value.inches()) * 100) / 100); }

std::vector<Caution> find_cautions(const Piece& piece, const job::Job& job) {
    std::vector<Caution> cautions;
    add_deep_kerfs(cautions, piece);
    for (const Concern concern : piece.bend.concerns) cautions.push_back(of_concern(concern, piece));
    add(cautions, of_tight_spot(piece));
    if (piece.bends_both_ways()) cautions.push_back({"reverse_bend", {}});
    add(cautions, of_settings(piece));
    add(cautions, of_plies(piece));
    add_coupon(cautions, piece);
    add(cautions, of_gaps(piece));
    add(cautions, of_bare_ends(piece));
    add(cautions, of_mitre(piece));
    add(cautions, of_stock(piece, job.stock));
    add(cautions, of_travel(piece, job.saw));
    return cautions;
}

void add_head_cautions(Piece& piece, const curve::Head& head, const job::Opening& opening) {
    if (opening.shape.value == job::Shape::horseshoe)
        piece.cautions.push_back({"horseshoe_entry", {{"span", head.span}, {"widest", curve::widest(head)}}});
    if (opening.legs && (*opening.legs)[0].value != (*opening.legs)[1].value) {
        const Length higher = (*opening.legs)[0].value - (*opening.legs)[1].value;
        piece.cautions.push_back(
            {higher.mm() > 0 ? "left_spring_higher" : "right_spring_higher", {{"higher", measure::abs(higher)}}});
        if (opening.shape.value != job::Shape::ordinates)
            piece.cautions.push_back({curve::tilts(opening.shape.value) ? "arch_tilts" : "arch_by_halves", {}});
    }
    if (opening.shape.value == job::Shape::tudor) add_tudor_radii(piece, head, opening);
    if (opening.casing && curve::goes_on_straight(opening.shape.value) && head.outline.has_corner(0))
        piece.cautions.push_back({"casing_goes_on_straight", {}});
    add_survey_cautions(piece);
}

void add_survey_cautions(Piece& piece) {
    if (!piece.survey) return;
    const curve::Survey& survey = *piece.survey;
    // A slip of the tape makes whatever else is said of the curve worthless: it comes first.
    if (survey.suspect)
        piece.cautions.insert(piece.cautions.begin(), {"ordinate_suspect",
                                                       {{"station", survey.stations.at(survey.suspect->point)},
                                                        {"off", to_hundredths(survey.suspect->off)}}});
    const curve::Misses& used = survey.used_misses();
    if (survey.used != survey.recommended)
        piece.cautions.push_back({"fit_not_recommended",
                                  {{"used", std::string(job::word(survey.used))},
                                   {"recommended", std::string(job::word(survey.recommended))},
                                   {"miss", to_hundredths(used.worst())}}});
    if (survey.used == job::Fit::fair && used.worst() > survey.tape + Length::mm(0.01))
        piece.cautions.push_back({"curvature_limited", {{"miss", to_hundredths(used.worst())}}});
    if (survey.used == job::Fit::fair)
        for (const curve::Survey::Gap& gap : worst_gaps(survey))
            piece.cautions.push_back(
                {"ordinates_far_apart",
                 {{"from", survey.stations.at(gap.after)}, {"to", survey.stations.at(gap.after + 1)}}});
}

}  // namespace kerfpacket::plan
