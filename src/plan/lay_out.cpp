#include "plan/piece.h"

#include <algorithm>
#include <cmath>

#include "bend/spacing.h"
#include "measure/require.h"
#include "plan/checks.h"
#include "plan/kerfs.h"
#include "plan/search.h"

namespace kerfpacket::plan {
namespace {

void set_board(Piece& piece, const job::Board& board, const Cut& cut, const Wood& wood, const job::Saw& saw) {
    piece.material = board.material.value;
    piece.thickness = board.thickness.value;
    piece.width = board.width.value;
    piece.trim = board.trim.value;
    piece.zero = board.zero;
    piece.tick = board.tick;
    piece.strip = board.strip.value;
    piece.kerf = saw.kerf.value;
    piece.hinge_part = wood.hinge_part;
    piece.plies = plies_of(board);
    piece.kerf_depth = cut.depth;
    piece.spacing = cut.most;
    piece.least_spacing = cut.most;
    piece.depth_given = board.kerf_depth.given.has_value() || board.kerf_depth.half;
    piece.spacing_given = cut.kerfs != Cut::Kerfs::solved;
    piece.kerfs_given = cut.kerfs == Cut::Kerfs::by_hand;
}

/// Straighter than a radius of 1 km bends nothing.
constexpr double straight = 1e-6;

/// Sign of a radius's growth from the plain face to the line that keeps its length.
double outward(bend::KerfsOn on) { return on == bend::KerfsOn::outside ? 1 : -1; }

/// The widest spacing that is ok at the radius of an arc, which depends a little on the spacing itself.
Length arc_spacing(const Piece& piece, const Cut& cut, const bend::Material& material) {
    Length spacing = cut.most;
    for (int pass = 0; pass < 3; ++pass) {
        const Length below_face = bend::length_keeping_depth(piece.cell(spacing), material.softness);
        const Length radius = (piece.finish_radius + below_face * outward(piece.kerfs_on)) * (1 - cut.tighter);
        spacing = bend::widest_spacing(piece.cell(cut.most), material, piece.kerfs_on, radius, cut.least, cut.most);
    }
    return spacing;
}

/// One arc and nothing else.
bool is_one_arc(const curve::Curve& curve) {
    return curve.is_exact_path() && curve.joints().size() == 2 && !curve.path().segments().front().is_line();
}

/// Where a curve bends the other way for good: a lobe that turns less than a hundredth of a degree is rounding, or a
/// ripple of the tape.
std::vector<Length> changes_of_side(const curve::Curve& curve) {
    constexpr Angle least = Angle::degrees(0.01);
    std::vector<Length> places = curve.inflections();
    const auto turn = [&](std::size_t lobe) {
        const Length from = lobe == 0 ? Length() : places[lobe - 1];
        const Length to = lobe == places.size() ? curve.length() : places[lobe];
        return std::abs((curve.at(to).turned - curve.at(from).turned).radians());
    };
    for (std::size_t lobe = 0; lobe <= places.size() && !places.empty();) {
        if (turn(lobe) >= least.radians()) {
            ++lobe;
            continue;
        }
        // Without the lobe its neighbours are one.
        const auto first = places.begin() + static_cast<std::ptrdiff_t>(lobe == 0 ? 0 : lobe - 1);
        places.erase(first, lobe == 0 || lobe == places.size() ? first + 1 : first + 2);
        lobe = 0;
    }
    return places;
}

/// Of both ways added, between two distances.
Angle whole_turn(const curve::Curve& curve, Length from, Length to, const std::vector<BendRun>& runs) {
    double turn = 0;
    for (const BendRun& run : runs) {
        const Length low = std::max(from, run.from);
        const Length high = std::min(to, run.to);
        if (low < high) turn += std::abs((curve.at(high).turned - curve.at(low).turned).radians());
    }
    return Angle::radians(turn);
}

/// Distances along the measured curve between which there is wood of the board's bend, on either face.
curve::Extent extent_of(const Request& wanted) {
    return {std::min(wanted.ends[0].wall, wanted.ends[0].finish), std::max(wanted.ends[1].wall, wanted.ends[1].finish)};
}

void set_curve(Piece& piece, const Request& wanted) {
    const TightSpot spot = tight_spots(wanted).front();
    const Faces face = faces(wanted.measured_to, piece.thickness);
    piece.circular = is_one_arc(wanted.bent());
    piece.kerfs_on = spot.on;
    piece.measured_span = wanted.span;
    piece.measured_rise = wanted.rise;
    piece.measured_radius = spot.measured_radius;
    piece.wall_radius = piece.measured_radius + face.wall * outward(spot.on);
    piece.finish_radius = spot.plain_radius(wanted.measured_to, piece.thickness);
}

/// How far the line that keeps its length stands from the plain face. Where the spacing varies that is not the same
/// everywhere: the mean over the turn holds for the whole board, within a few thousandths of an inch.
Length below_plain_face(const Piece& piece, const Request& wanted, const Cut& cut, const bend::Material& material) {
    const Length usual = bend::length_keeping_depth(piece.cell(piece.spacing), material.softness);
    if (piece.circular || cut.kerfs != Cut::Kerfs::solved) return usual;
    const Length left = faces(wanted.measured_to, piece.thickness).finish + usual;
    const curve::Curve line = wanted.bent().parallel(left);
    const std::vector<Length> spacings = local_spacings(piece, line, {}, line.length(), material, cut);
    Length sum;
    double turn = 0;
    const Length step = line.length() / static_cast<double>(spacings.size() - 1);
    for (std::size_t i = 0; i < spacings.size(); ++i) {
        const double bent = std::abs(line.at(step * static_cast<double>(i)).curvature);
        sum += bend::length_keeping_depth(piece.cell(spacings[i]), material.softness) * bent;
        turn += bent;
    }
    return turn > 0 ? sum / turn : usual;
}

/// The blank, which bends about the line that keeps its length.
Unrolled unroll(Piece& piece, const Request& wanted, const Cut& cut, const bend::Material& material) {
    const Faces face = faces(wanted.measured_to, piece.thickness);
    const Length below_face = below_plain_face(piece, wanted, cut, material);
    const Length left = face.finish + below_face;
    const curve::Extent extent = extent_of(wanted);
    // The line starts where the wood does.
    const curve::Curve curve = wanted.bent();
    const auto along = [&](Length measured) { return curve.on_parallel(measured - extent.from, left); };
    Unrolled board{curve,
                   extent.from,
                   left,
                   curve.parallel(left),
                   piece.trim + wanted.tails[0],
                   below_face,
                   along(wanted.ends[0].finish),
                   along(wanted.ends[1].finish)};
    piece.bend_radius = piece.finish_radius + below_face * outward(piece.kerfs_on);

    piece.tails = wanted.tails;
    const Length end = board.from_left(board.line.length());
    piece.blank_length = end + piece.tails[1] + piece.trim;
    for (std::size_t i = 0; i < 2; ++i) {
        const CurveEnd& end_cut = wanted.ends[i];
        piece.ends[i] = {end_cut.meets, end_cut.mitre, board.from_left(along(end_cut.wall)),
                         board.from_left(along(end_cut.finish))};
    }
    piece.bend_start = board.origin;
    piece.bend_end = end;
    const std::vector<BendRun> runs = bend_runs(board.line);
    piece.runs.clear();
    for (const BendRun& run : runs) piece.runs.push_back({board.from_left(run.from), board.from_left(run.to), run.on});
    // What lies beyond the plain face at a mitre is a wedge of the back, which bends nothing.
    piece.turn = whole_turn(board.line, board.bend_from, board.bend_to, runs);
    piece.finish_length = piece.tails[0] + piece.tails[1] +
                          curve.on_parallel(wanted.ends[1].finish - extent.from, face.finish) -
                          curve.on_parallel(wanted.ends[0].finish - extent.from, face.finish);
    return board;
}

/// Everything that is measured from the left end, from zero.
void count_from_zero(Piece& piece) {
    if (piece.zero == job::End::left) return;
    std::swap(piece.tails[0], piece.tails[1]);
    std::swap(piece.ends[0], piece.ends[1]);
    const auto mirror = [&](Length& at) { at = piece.blank_length - at; };
    for (BoardEnd& end : piece.ends) {
        mirror(end.kerf_face);
        mirror(end.plain_face);
    }
    std::swap(piece.bend_start, piece.bend_end);
    mirror(piece.bend_start);
    mirror(piece.bend_end);
    std::reverse(piece.runs.begin(), piece.runs.end());
    for (BendRun& run : piece.runs) run = {piece.blank_length - run.to, piece.blank_length - run.from, run.on};
}

void set_spacing_range(Piece& piece) {
    if (!piece.kerfs_given && (piece.circular || piece.spacing_given)) return;
    if (piece.kerfs.size() < 2) return;
    piece.spacing = piece.kerfs[1].at - piece.kerfs[0].at;
    piece.least_spacing = piece.spacing;
    for (std::size_t i = 2; i < piece.kerfs.size(); ++i) {
        const Length gap = piece.kerfs[i].at - piece.kerfs[i - 1].at;
        piece.spacing = std::max(piece.spacing, gap);
        piece.least_spacing = std::min(piece.least_spacing, gap);
    }
}

/// Radii of the faces at the kerf that governs.
void set_governing_radii(Piece& piece, const Unrolled& board) {
    const auto governing = std::find_if(piece.kerfs.begin(), piece.kerfs.end(),
                                        [&](const Kerf& kerf) { return kerf.radius == piece.bend_radius; });
    if (governing == piece.kerfs.end()) return;
    piece.finish_radius = piece.bend_radius - board.below_face * outward(governing->on);
    piece.wall_radius = piece.finish_radius + piece.thickness * outward(governing->on);
}

/// Once a coupon or a trial counts, the chance is judged beside the strain.
void judge_chance(Piece& piece) {
    const auto note = [&](bend::Concern concern, bend::Verdict verdict) {
        piece.bend.concerns.push_back(concern);
        piece.bend.verdict = std::max(piece.bend.verdict, verdict);
    };
    if (piece.chance.breaks > bend::caution_chance) note(bend::Concern::chance_break, bend::Verdict::break_likely);
    else if (piece.chance.breaks > bend::ok_chance) note(bend::Concern::chance_caution, bend::Verdict::caution);
}

/// The blank, and its kerfs where the cut puts them.
Unrolled cut_blank(Piece& piece, const Request& wanted, const Cut& cut, const bend::Material& material) {
    const bool solved_arc = piece.circular && cut.kerfs == Cut::Kerfs::solved;
    if (solved_arc) piece.spacing = arc_spacing(piece, cut, material);
    std::optional<Unrolled> board = unroll(piece, wanted, cut, material);
    count_from_zero(piece);
    if (solved_arc) {
        // A whole number of kerfs stands a little closer, which moves the line that keeps its length by a hair.
        const ArcKerfs kerfs = arc_kerfs(piece, *board);
        // On a bend as short as this the blade would leave no wood between them: that is told as no kerf at all.
        if (kerfs.count < 1 || kerfs.spacing <= piece.kerf) return *board;
        piece.spacing = kerfs.spacing;
        board = unroll(piece, wanted, cut, material);
        count_from_zero(piece);
        set_arc_kerfs(piece, *board, kerfs.count);
    } else if (cut.kerfs == Cut::Kerfs::solved) {
        set_solved_kerfs(piece, *board, material, cut);
    } else if (cut.kerfs == Cut::Kerfs::by_hand) {
        set_given_kerfs(piece, wanted.wanted->kerfs);
    } else {
        set_even_kerfs(piece);
    }
    return *board;
}

}  // namespace

Faces faces(job::Surface measured_to, Length thickness) {
    if (measured_to == job::Surface::wall) return {{}, -thickness};
    return {thickness, {}};
}

std::vector<BendRun> bend_runs(const curve::Curve& curve) {
    std::vector<Length> ends = changes_of_side(curve);
    ends.push_back(curve.length());
    std::vector<BendRun> runs;
    Length from;
    for (const Length to : ends) {
        // The kerfs are on the left of travel.
        const double turned = (curve.at(to).turned - curve.at(from).turned).radians();
        runs.push_back({from, to, turned > 0 ? bend::KerfsOn::inside : bend::KerfsOn::outside});
        from = to;
    }
    return runs;
}

std::vector<Length> Piece::reverses() const {
    std::vector<Length> places;
    for (std::size_t i = 1; i < runs.size(); ++i) places.push_back(runs[i].from);
    return places;
}

Length usual_depth(const job::Board& board) { return board.thickness.value / 2; }

Length first_depth(const job::Board& board, measure::Unit unit) {
    const Length usual = usual_depth(board);
    const std::vector<Length> all =
        cross_ply_depths(plies_of(board), depth_step(unit) / 2, Length(), board.thickness.value - bend::least_web);
    const auto nearest = std::min_element(
        all.begin(), all.end(), [&](Length a, Length b) { return measure::abs(a - usual) < measure::abs(b - usual); });
    return nearest == all.end() ? usual : *nearest;
}

std::vector<Length> plies_of(const job::Board& board) {
    Length sum;
    for (const auto& ply : board.plies) sum += ply.value;
    std::vector<Length> plies;
    for (const auto& ply : board.plies) plies.push_back(ply.value * (board.thickness.value / sum));
    return plies;
}

curve::Curve Request::bent() const {
    const auto [from, to] = extent_of(*this);
    return curve.part(from, to);
}

Length TightSpot::plain_radius(job::Surface measured_to, Length thickness) const {
    return measured_radius + faces(measured_to, thickness).finish * outward(on);
}

std::vector<TightSpot> tight_spots(const Request& wanted) {
    const curve::Curve curve = wanted.bent();
    const double left = curve.sharpest_left({}, curve.length()).curvature;
    const double right = curve.sharpest_right({}, curve.length()).curvature;
    const auto spot = [](bend::KerfsOn on, double curvature) {
        return TightSpot{on, Length::mm(1 / std::max(curvature, 1e-9))};
    };
    std::vector<TightSpot> spots{spot(bend::KerfsOn::outside, right), spot(bend::KerfsOn::inside, left)};
    if (left > right) std::swap(spots[0], spots[1]);
    if (std::min(left, right) < straight) spots.pop_back();
    return spots;
}

tl::expected<Piece, job::Diagnostics> lay_out(const Request& wanted, const Cut& cut, const Wood& wood,
                                              const job::Job& job) {
    Piece piece;
    piece.id = wanted.id;
    piece.kind = wanted.kind;
    piece.board = wanted.board;
    piece.boards = wanted.boards;
    piece.quantity = wanted.quantity;
    piece.side = wanted.side;
    piece.measured_to = wanted.measured_to;
    piece.shape = wanted.shape;
    set_board(piece, *wanted.wanted, cut, wood, job.saw);
    set_curve(piece, wanted);
    const Unrolled board = cut_blank(piece, wanted, cut, wood.material);
    const job::Diagnostics wrong = check_kerfs(piece, *wanted.wanted, job);
    if (!wrong.empty()) return tl::unexpected(wrong);
    set_spacing_range(piece);
    assess_kerfs(piece, board, wood.material);
    if (!piece.circular) set_governing_radii(piece, board);
    // Many are laid out before one is taken: the chance is reckoned here only where it counts for the verdict.
    if (wood.known.counted() > 0) {
        piece.chance = chance_of(piece, wood, job);
        judge_chance(piece);
    }
    return piece;
}

}  // namespace kerfpacket::plan
