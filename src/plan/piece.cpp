#include "plan/piece.h"

#include <algorithm>
#include <cmath>

#include "bend/saw.h"
#include "measure/require.h"
#include "plan/checks.h"
#include "plan/kerfs.h"

namespace kerfpacket::plan {
namespace {

/// Common practice, no source: half the thickness deep.
constexpr double usual_depth_ratio = 0.5;

bend::Cell cell_of(const Piece& piece) { return {piece.thickness, piece.kerf_depth, piece.kerf, piece.spacing}; }

void set_board(Piece& piece, const job::Board& board, const job::Saw& saw) {
    piece.material = board.material.value;
    piece.thickness = board.thickness.value;
    piece.width = board.width.value;
    piece.trim = board.trim.value;
    piece.zero = board.zero;
    piece.tick = board.tick;
    piece.kerf = saw.kerf.value;
    piece.kerf_depth = depth_of(board);
    piece.spacing = spacing_of(board);
    piece.least_spacing = piece.spacing;
    piece.depth_given = board.kerf_depth.given.has_value() || board.kerf_depth.half;
    piece.spacing_given = board.spacing.given.has_value();
}

/// One arc and nothing else.
bool is_one_arc(const curve::Curve& curve) {
    return curve.is_exact_path() && curve.joints().size() == 2 && !curve.path().segments().front().is_line();
}

/// Where a curve bends the other way for good: a lobe that turns less than a hundredth of a degree is rounding, or a
/// ripple of the tape.
std::vector<Length> reverses(const curve::Curve& curve) {
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
Angle whole_turn(const curve::Curve& curve, Length from, Length to, const std::vector<Length>& reverses) {
    double turn = 0;
    const auto add = [&](Length low, Length high) {
        turn += std::abs((curve.at(high).turned - curve.at(low).turned).radians());
    };
    for (const Length at : reverses) {
        if (at <= from || at >= to) continue;
        add(from, at);
        from = at;
    }
    add(from, to);
    return Angle::radians(turn);
}

/// Distances along the measured curve between which there is wood of the board's bend, on either face.
curve::Extent extent_of(const Request& wanted) {
    return {std::min(wanted.ends[0].wall, wanted.ends[0].finish), std::max(wanted.ends[1].wall, wanted.ends[1].finish)};
}

void set_curve(Piece& piece, const Request& wanted) {
    const auto [from, to] = extent_of(wanted);
    const curve::Curve curve = wanted.curve.part(from, to);
    const auto left = curve.sharpest_left({}, curve.length());
    const auto right = curve.sharpest_right({}, curve.length());
    const auto& sharpest = left.curvature > right.curvature ? left : right;
    const bool opens = right.curvature >= left.curvature;
    piece.circular = is_one_arc(curve);
    piece.kerfs_on = opens ? bend::KerfsOn::outside : bend::KerfsOn::inside;
    piece.measured_span = wanted.span;
    piece.measured_rise = wanted.rise;
    piece.measured_radius = Length::mm(1 / std::max(sharpest.curvature, 1e-9));
    const Faces face = faces(wanted.measured_to, piece.thickness);
    const double outward = opens ? 1 : -1;
    piece.wall_radius = piece.measured_radius + face.wall * outward;
    piece.finish_radius = piece.measured_radius + face.finish * outward;
}

/// How far the line that keeps its length stands from the plain face. Where the spacing varies that is not the same
/// everywhere: the mean over the turn holds for the whole board, within a few thousandths of an inch.
Length below_plain_face(const Piece& piece, const Request& wanted, const bend::Material& material) {
    const Length usual = bend::length_keeping_depth(cell_of(piece), material.softness);
    if (piece.circular || piece.spacing_given) return usual;
    const auto [from, to] = extent_of(wanted);
    const Length left = faces(wanted.measured_to, piece.thickness).finish + usual;
    const curve::Curve line = wanted.curve.part(from, to).parallel(left);
    const std::vector<Length> spacings = local_spacings(piece, line, {}, line.length(), material);
    Length sum;
    double turn = 0;
    const Length step = line.length() / static_cast<double>(spacings.size() - 1);
    for (std::size_t i = 0; i < spacings.size(); ++i) {
        bend::Cell cell = cell_of(piece);
        cell.spacing = spacings[i];
        const double bent = std::abs(line.at(step * static_cast<double>(i)).curvature);
        sum += bend::length_keeping_depth(cell, material.softness) * bent;
        turn += bent;
    }
    return turn > 0 ? sum / turn : usual;
}

/// The blank, which bends about the line that keeps its length.
Unrolled unroll(Piece& piece, const Request& wanted, const bend::Material& material) {
    const Faces face = faces(wanted.measured_to, piece.thickness);
    const Length below_face = below_plain_face(piece, wanted, material);
    const Length left = face.finish + below_face;
    const curve::Extent extent = extent_of(wanted);
    // The line starts where the wood does.
    const curve::Curve curve = wanted.curve.part(extent.from, extent.to);
    const auto along = [&](Length measured) { return curve.on_parallel(measured - extent.from, left); };
    Unrolled board{curve,
                   extent.from,
                   left,
                   curve.parallel(left),
                   piece.trim + wanted.tails[0],
                   below_face,
                   along(wanted.ends[0].finish),
                   along(wanted.ends[1].finish)};
    piece.bend_radius = piece.finish_radius + below_face * (piece.kerfs_on == bend::KerfsOn::outside ? 1.0 : -1.0);

    piece.tails = wanted.tails;
    const Length end = board.from_left(board.line.length());
    piece.blank_length = end + piece.tails[1] + piece.trim;
    for (std::size_t i = 0; i < 2; ++i) {
        const CurveEnd& cut = wanted.ends[i];
        piece.ends[i] = {cut.meets, cut.mitre, board.from_left(along(cut.wall)), board.from_left(along(cut.finish))};
    }
    piece.bend_start = board.origin;
    piece.bend_end = end;
    const std::vector<Length> changes = reverses(board.line);
    for (const Length at : changes) piece.reverses.push_back(board.from_left(at));
    // What lies beyond the plain face at a mitre is a wedge of the back, which bends nothing.
    piece.turn = whole_turn(board.line, board.bend_from, board.bend_to, changes);
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
    std::reverse(piece.reverses.begin(), piece.reverses.end());
    for (Length& at : piece.reverses) mirror(at);
}

void set_spacing_range(Piece& piece) {
    if (piece.circular || piece.spacing_given || piece.kerfs.size() < 2) return;
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
    const double outward = governing->on == bend::KerfsOn::outside ? 1 : -1;
    piece.finish_radius = piece.bend_radius - board.below_face * outward;
    piece.wall_radius = piece.finish_radius + piece.thickness * outward;
}

void set_saw(Piece& piece, const job::Saw& saw) {
    piece.groove_ramp = bend::groove_ramp(saw.blade_diameter.value, piece.kerf_depth);
    // Board width plus spacer less rear limit is never less than the width.
    piece.travel_needed = piece.width;
    if (!saw.rear_limit) return;
    piece.spacer = bend::spacer(saw.rear_limit->value);
    piece.travel_needed = bend::travel_needed(piece.width, *piece.spacer, saw.rear_limit->value);
}

}  // namespace

Faces faces(job::Surface measured_to, Length thickness) {
    if (measured_to == job::Surface::wall) return {{}, -thickness};
    return {thickness, {}};
}

Length depth_of(const job::Board& board) {
    return board.kerf_depth.given.value_or(board.thickness.value * usual_depth_ratio);
}

Length spacing_of(const job::Board& board) { return board.spacing.given.value_or(usual_spacing); }

tl::expected<Piece, job::Diagnostics> make_piece(const Request& wanted, const job::Job& job) {
    const job::Board& board = *wanted.wanted;
    Piece piece;
    piece.id = wanted.id;
    piece.kind = wanted.kind;
    piece.board = wanted.board;
    piece.boards = wanted.boards;
    piece.quantity = wanted.quantity;
    piece.side = wanted.side;
    piece.measured_to = wanted.measured_to;
    piece.shape = wanted.shape;
    set_board(piece, board, job.saw);
    set_curve(piece, wanted);

    const bend::Material* material = bend::find_material(piece.material);
    measure::require(material != nullptr, "a board that was checked is of a known material");
    const Unrolled unrolled = unroll(piece, wanted, *material);
    count_from_zero(piece);
    if (piece.circular || piece.spacing_given) set_even_kerfs(piece);
    else set_solved_kerfs(piece, unrolled, *material);
    const job::Diagnostics wrong = check_kerfs(piece, board, job);
    if (!wrong.empty()) return tl::unexpected(wrong);
    set_spacing_range(piece);
    set_saw(piece, job.saw);
    assess_kerfs(piece, unrolled, *material);
    if (!piece.circular) set_governing_radii(piece, unrolled);
    return piece;
}

}  // namespace kerfpacket::plan
