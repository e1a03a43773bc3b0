#include "plan/cautions.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "bend/section.h"
#include "job/choices.h"
#include "measure/require.h"
#include "plan/place_cautions.h"
#include "plan/stock_boards.h"

namespace kerfpacket::plan {
namespace {

using bend::Concern;

/// Radius of the line at the kerf that closes first.
Length closing_at(const Piece& piece) {
    Length least = piece.radii.line;
    for (const Kerf& kerf : piece.blank().kerfs)
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
        case Concern::web_thin: return {"web_thin", {{"web", piece.cut.thinnest_web()}}};
        case Concern::depth_out_of_range:
            return {"depth_out_of_range", {{"ratio", piece.cut.depth / piece.cut.thickness}}};
        case Concern::kerf_out_of_range:
            return {"kerf_out_of_range", {{"ratio", piece.cut.kerf / piece.cut.thickness}}};
        case Concern::spacing_out_of_range:
            return {"spacing_out_of_range", {{"ratio", piece.cut.spacing / piece.cut.thickness}}};
        case Concern::land_out_of_range: return {"land_out_of_range", {{"ratio", piece.cut.kerf / piece.cut.spacing}}};
    }
    throw measure::Bug("a concern without a caution");
}

/// A blank for which no board of the stock is long enough, where the job says what that is.
std::optional<Caution> of_stock(const Piece& piece, const job::Job& job) {
    const LongestBlank longest =
        longest_blank(section_of(piece.material, piece.cut.thickness, piece.stock_width(), job.stock), piece.grain,
                      job.stock, job.header.units);
    Length blank;
    for (const Blank& one : piece.blanks) blank = std::max(blank, Piece::stock_length(one));
    if (longest.usual || measure::round_to_tape(blank, job.header.units) <= longest.most) return std::nullopt;
    return Caution{"blank_longer_than_stock", {{"blank", blank}, {"stock", longest.stock}}};
}

/// A board wider than the slide reaches can be turned for the rest, up to twice that width.
std::optional<Caution> of_travel(const Piece& piece, const job::Saw& saw) {
    if (!saw.travel || !piece.saw.travel_needed || *piece.saw.travel_needed <= saw.travel->value) return std::nullopt;
    const Length reached = piece.saw.width_reached.value_or(saw.travel->value);
    const char* key = reached * 2 >= piece.width ? "travel_short" : "travel_far_short";
    return Caution{key, {{"needed", *piece.saw.travel_needed}, {"travel", saw.travel->value}, {"reached", reached}}};
}

/// Where the last kerf before a mitre stands much further from it than kerfs do, that end stays straight.
std::optional<Caution> of_mitre(const Piece& piece) {
    constexpr Length seen = Length::inches(1.0 / 64);  // that the flat end stands off the curve. Judgement
    const Blank& blank = piece.blank();
    if (blank.kerfs.empty()) return std::nullopt;
    Length widest;
    Length off;
    for (const bool far : {false, true}) {
        const BoardEnd& end = blank.ends[far ? 1 : 0];
        if (end.mitre.radians() == 0) continue;
        const Kerf& nearest = far ? blank.kerfs.back() : blank.kerfs.front();
        widest = std::max(widest, measure::abs(nearest.at - end.kerf_face));
        const Length flat = far ? blank.bend_end - nearest.at : nearest.at - blank.bend_start;
        if (flat > Length() && nearest.radius > Length()) off = std::max(off, flat * (flat / nearest.radius) / 2);
    }
    if (widest <= piece.cut.spacing * 2) return std::nullopt;
    if (off < seen) return Caution{"mitre_kerf_gap", {{"gap", widest}}};
    return Caution{"mitre_kerf_flat", {{"gap", widest}, {"off", curve::to_hundredths(off)}}};
}

/// "12", "12, 40 and 7 more".
std::string numbers(const std::vector<int>& all) {
    constexpr std::size_t most = 6;
    std::string text;
    for (std::size_t i = 0; i < std::min(all.size(), most); ++i) text += (i > 0 ? ", " : "") + std::to_string(all[i]);
    return all.size() > most ? text + " +" + std::to_string(all.size() - most) : text;
}

/// Joints that lie where the board bends.
std::optional<Caution> of_joints(const Piece& piece) {
    std::vector<int> bent;
    Length off;
    for (std::size_t i = 0; i < piece.joints.size(); ++i) {
        if (!piece.joints[i].in_bend) continue;
        bent.push_back(static_cast<int>(i) + 1);
        off = std::max(off, piece.joints[i].off);
    }
    if (bent.empty()) return std::nullopt;
    const Length at_most = Length::inches(std::ceil(off.inches() * 100) / 100);
    if (piece.splay) return Caution{"joint_on_line", {{"n", numbers(bent)}}};
    return Caution{"joint_in_bend", {{"n", numbers(bent)}, {"off", at_most}}};
}

std::optional<Caution> of_gaps(const Piece& piece) {
    if (piece.weak_links.empty()) return std::nullopt;
    double worst = 1;
    for (const int n : piece.weak_links)
        worst = std::max(worst, piece.blank().gap_ratio(static_cast<std::size_t>(n - 1)));
    return Caution{"gap_ratio", {{"n", numbers(piece.weak_links)}, {"ratio", worst}}};
}

/// A bend that goes on beyond the last kerf given by hand, more than half a gap.
std::optional<Caution> of_bare_ends(const Piece& piece) {
    if (!piece.cut.kerfs_given || piece.blank().kerfs.size() < 2) return std::nullopt;
    const std::size_t n = piece.blank().kerfs.size();
    const Length before = piece.blank().kerfs.front().at - piece.blank().bend_start;
    const Length after = piece.blank().bend_end - piece.blank().kerfs.back().at;
    const Length bare = std::max(before - (piece.blank().kerfs[1].at - piece.blank().kerfs[0].at) / 2,
                                 after - (piece.blank().kerfs[n - 1].at - piece.blank().kerfs[n - 2].at) / 2);
    if (bare < Length::mm(0.5)) return std::nullopt;
    return Caution{"bend_without_kerfs", {{"length", std::max(before, after)}}};
}

/// Depth and spacing as they came about, where that wants care.
std::optional<Caution> of_settings(const Piece& piece) {
    if (piece.settings.rule == Rule::least_strain) {
        if (piece.cut.depth_given) return Caution{"nothing_ok_at_this_depth", {}};
        if (!piece.settings.ok_from) return Caution{"nothing_is_ok", {}};
        return Caution{piece.settings.ok_from_all ? "nothing_ok_at_this_radius" : "nothing_ok_but_strain_from",
                       {{"radius", *piece.settings.ok_from}}};
    }
    if (piece.settings.rule != Rule::given || !piece.settings.solved) return std::nullopt;
    const Choice& better = *piece.settings.solved;
    if (better.verdict >= piece.bend.verdict) return std::nullopt;
    return Caution{"solve_would_do", {{"depth", better.depth}, {"kerfs", better.kerfs}, {"u", better.utilisation}}};
}

/// Plywood cut to a depth that ends in a ply along the board.
std::optional<Caution> of_plies(const Piece& piece) {
    if (bend::ends_well(piece.cut.cell(piece.cut.spacing))) return std::nullopt;
    if (!piece.settings.cross_ply) return Caution{"ends_in_ply_along", {}};
    const Choice& better = *piece.settings.cross_ply;
    if (better.verdict == bend::Verdict::break_likely)
        return Caution{"ends_in_ply_along_no_better", {{"depth", better.depth}}};
    return Caution{"ends_in_ply_along_better",
                   {{"depth", better.depth}, {"kerfs", better.kerfs}, {"u", better.utilisation}}};
}

/// A moulded board of which only the least thickness is known.
std::optional<Caution> of_moulding(const Piece& piece) {
    if (!piece.cut.moulded() || piece.cut.profile_told) return std::nullopt;
    return Caution{"profile_untold", {{"thinnest", piece.cut.thinnest()}}};
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
    const Kerf& kerf = piece.blank().kerfs.at(static_cast<std::size_t>(piece.governing - 1));
    const bool other = measure::abs(coupon.depth - piece.cut.depth) > Length::inches(1.0 / 64) ||
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
    for (const Kerf& kerf : piece.blank().kerfs)
        if (kerf.radius == piece.radii.line)
            return Caution{"tight_spot", {{"radius", piece.radii.finish}, {"at", kerf.at}}};
    return std::nullopt;
}

/// Grain that the bend crosses askew: no figure of a table stands for it.
std::optional<Caution> of_grain(const Piece& piece) {
    if (!piece.rake || !piece.rake->grain) return std::nullopt;
    return Caution{"grain_askew", {{"angle", static_cast<int>(std::lround(piece.rake->kerf().degrees()))}}};
}

/// A level end may stand further from square than a saw turns that turns to the kerfs.
std::optional<Caution> of_ends(const Piece& piece, const job::Saw& saw) {
    if (!piece.rake || !saw.mitre_limit) return std::nullopt;
    const auto whole = [](Angle angle) { return static_cast<int>(std::lround(angle.degrees())); };
    for (const job::EndCut cut : piece.rake->ends)
        if (whole(piece.rake->end(cut)) > whole(saw.mitre_limit->value))
            return Caution{"end_beyond_saw",
                           {{"angle", whole(piece.rake->end(cut))}, {"limit", whole(saw.mitre_limit->value)}}};
    return std::nullopt;
}

/// A board is seldom bent the thick way: width and thickness may stand in the wrong order.
std::optional<Caution> of_section(const Piece& piece) {
    if (piece.splay || piece.cut.thickness <= piece.width) return std::nullopt;
    return Caution{"thicker_than_wide", {{"thickness", piece.cut.thickness}, {"width", piece.width}}};
}

/// Steeper than stairs are at their usual line: rise and run may stand in the wrong order.
std::optional<Caution> of_slope(const Piece& piece) {
    if (!piece.rake || piece.rake->kerf() <= Angle::degrees(45)) return std::nullopt;
    return Caution{"rake_steep", {{"angle", static_cast<int>(std::lround(piece.rake->kerf().degrees()))}}};
}

/// Until a coupon counts the strain alone makes the verdict. Where the arc is so flat or short that a tape's error
/// moves its radius far, it is ok by that, and many boards like it would break nevertheless.
std::optional<Caution> of_table(const Piece& piece) {
    constexpr int told_without = 50;
    const int one_in = bend::one_in(piece.chance.breaks);
    if (piece.bend.verdict != bend::Verdict::ok || piece.chance.counted() || piece.worst_deep() != nullptr ||
        one_in >= told_without)
        return std::nullopt;
    if (one_in == 1) return Caution{"ok_by_strain_most", {}};
    return Caution{"ok_by_strain", {{"n", one_in}}};
}

void add(std::vector<Caution>& cautions, std::optional<Caution> caution) {
    if (caution) cautions.push_back(std::move(*caution));
}

/// Every concern of the bend, then stock, saw and settings.
std::vector<Caution> of_piece(const Piece& piece, const job::Job& job) {
    std::vector<Caution> cautions;
    add_deep_kerfs(cautions, piece);
    for (const Concern concern : piece.bend.concerns) cautions.push_back(of_concern(concern, piece));
    add(cautions, of_table(piece));
    add(cautions, of_tight_spot(piece));
    add(cautions, of_section(piece));
    add(cautions, of_slope(piece));
    add(cautions, of_grain(piece));
    if (piece.blank().bends_both_ways()) cautions.push_back({"reverse_bend", {}});
    add(cautions, of_settings(piece));
    add(cautions, of_plies(piece));
    add(cautions, of_moulding(piece));
    add_coupon(cautions, piece);
    add(cautions, of_gaps(piece));
    add(cautions, of_bare_ends(piece));
    add(cautions, of_mitre(piece));
    add(cautions, of_joints(piece));
    add(cautions, of_stock(piece, job));
    add(cautions, of_travel(piece, job.saw));
    add(cautions, of_ends(piece, job.saw));
    return cautions;
}

}  // namespace

std::vector<Caution> all_cautions(const Piece& piece, const std::vector<Caution>& of_place, const job::Job& job) {
    std::vector<Caution> cautions;
    // A slip of the tape makes whatever else is said of the curve worthless: it comes first.
    if (piece.survey) add(cautions, of_suspect(*piece.survey));
    for (const auto& more : {of_piece(piece, job), of_place, of_survey(piece.survey)})
        cautions.insert(cautions.end(), more.begin(), more.end());
    return cautions;
}

}  // namespace kerfpacket::plan
