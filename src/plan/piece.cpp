#include "plan/piece.h"

#include <algorithm>
#include <cmath>

#include "bend/saw.h"
#include "plan/checks.h"

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;

/// Common practice, no source: one kerf every half inch, half the thickness deep.
constexpr Length usual_spacing = 0.5_in;
constexpr double usual_depth_ratio = 0.5;

/// A kerf this near the end of its reach counts as beyond it: rounding, not wood.
constexpr Length tolerance = Length::mm(1e-9);

bend::Cell cell_of(const Piece& piece) { return {piece.thickness, piece.kerf_depth, piece.kerf, piece.spacing}; }

void set_board(Piece& piece, const job::Board& board, const job::Saw& saw) {
    piece.material = board.material.value;
    piece.thickness = board.thickness.value;
    piece.width = board.width.value;
    piece.trim = board.trim.value;
    piece.zero = board.zero;
    piece.tick = board.tick;
    piece.kerf = saw.kerf.value;
    piece.kerf_depth = board.kerf_depth.given.value_or(piece.thickness * usual_depth_ratio);
    piece.spacing = board.spacing.given.value_or(usual_spacing);
    piece.depth_given = board.kerf_depth.given.has_value() || board.kerf_depth.half;
    piece.spacing_given = board.spacing.given.has_value();
}

/// Radii of the wall and of the seen face, which stands a thickness nearer the room.
void set_curve(Piece& piece, const Request& wanted) {
    const bool concave = wanted.side == job::Side::concave;
    const Length toward_room = concave ? -piece.thickness : piece.thickness;
    const Length radius = wanted.measured.radius;
    const bool from_wall = wanted.measured_to == job::Surface::wall;
    piece.turn = wanted.measured.turn;
    piece.wall_radius = from_wall ? radius : radius - toward_room;
    piece.finish_radius = from_wall ? radius + toward_room : radius;
    piece.kerfs_on = concave ? bend::KerfsOn::outside : bend::KerfsOn::inside;
    piece.measured_span = wanted.measured.path.segments().front().chord();
    piece.measured_rise = radius * (1 - std::cos(piece.turn.radians() / 2));
    piece.measured_radius = radius;
}

/// Lengths along the blank, which bends about the line that keeps its length.
void set_lengths(Piece& piece, const Request& wanted, double softness) {
    const Length below_face = bend::length_keeping_depth(cell_of(piece), softness);
    const bool outside = piece.kerfs_on == bend::KerfsOn::outside;
    piece.bend_radius = outside ? piece.finish_radius + below_face : piece.finish_radius - below_face;
    piece.tails = wanted.tails;
    if (piece.zero == job::End::right) std::swap(piece.tails[0], piece.tails[1]);
    piece.bend_start = piece.trim + piece.tails[0];
    piece.bend_end = piece.bend_start + measure::arc_length(piece.bend_radius, piece.turn);
    piece.blank_length = piece.bend_end + piece.tails[1] + piece.trim;
    piece.finish_length = piece.tails[0] + piece.tails[1] + measure::arc_length(piece.finish_radius, piece.turn);
}

/// From a kerf's middle to its mark. Left and right are those of the operator, who sees the distances of a board that
/// is numbered from the right run leftward.
Length mark_offset(const Piece& piece) {
    if (piece.tick == job::Tick::centre) return {};
    const bool toward_zero = (piece.tick == job::Tick::left) == (piece.zero == job::End::left);
    return toward_zero ? -piece.kerf / 2 : piece.kerf / 2;
}

/// Kerfs at whole multiples of the spacing from zero, as one would with a tape, until every point of the bend lies
/// within half a spacing of one: an end kerf further in than that would have to turn more than its share. Stops one
/// past the most that is allowed.
void set_kerfs(Piece& piece) {
    const Length reach = piece.spacing / 2;
    // With hardly any trim the bend reaches the end of the board: a kerf wants wood on both sides.
    const Length low = std::max(piece.bend_start - reach + tolerance, piece.kerf);
    const Length high = std::min(piece.bend_end + reach - tolerance, piece.blank_length - piece.kerf);
    const double first = std::ceil(low / piece.spacing);
    const Length offset = mark_offset(piece);
    for (std::size_t i = 0; i <= most_kerfs; ++i) {
        const Length at = piece.spacing * (first + static_cast<double>(i));
        if (at > high) return;
        piece.kerfs.push_back({static_cast<int>(i) + 1, at, at + offset});
    }
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

Request request(const job::Opening& opening) {
    return {opening.id.value,
            Kind::arch_liner,
            opening.quantity,
            &opening.liner,
            curve::measured_curve(opening),
            opening.measured_to,
            job::Side::concave,
            {}};
}

Request request(const job::Wall& wall) {
    return {wall.id.value,
            Kind::wall_board,
            wall.quantity,
            &wall.board,
            curve::measured_curve(wall),
            wall.measured_to,
            wall.side.value,
            {wall.tails[0].value, wall.tails[1].value}};
}

tl::expected<Piece, job::Diagnostics> make_piece(const Request& wanted, const job::Job& job) {
    const job::Board& board = *wanted.board;
    Piece piece;
    piece.id = wanted.id;
    piece.kind = wanted.kind;
    piece.quantity = wanted.quantity;
    piece.side = wanted.side;
    piece.measured_to = wanted.measured_to;
    set_board(piece, board, job.saw);
    set_curve(piece, wanted);

    const bend::Material* material = bend::find_material(piece.material);
    job::Diagnostics wrong = check_board(piece, board, job);
    if (!wrong.empty()) return tl::unexpected(wrong);
    set_lengths(piece, wanted, material->softness);
    set_kerfs(piece);
    wrong = check_kerfs(piece, board, job);
    if (!wrong.empty()) return tl::unexpected(wrong);
    set_saw(piece, job.saw);
    piece.bend = bend::assess(cell_of(piece), *material, piece.kerfs_on, piece.bend_radius, piece.turn,
                              static_cast<int>(piece.kerfs.size()));
    return piece;
}

}  // namespace kerfpacket::plan
