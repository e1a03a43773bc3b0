#include "plan/lines.h"

#include <algorithm>
#include <cmath>
#include <tuple>

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;

/// Wall and seen face: on an arch and on a wall alike the room lies to the right of travel.
std::pair<Path, Path> wall_and_finish(const Path& measured, const Piece& piece) {
    if (piece.measured_to == job::Surface::wall) return {measured, measured.offset_left(-piece.thickness)};
    return {measured.offset_left(piece.thickness), measured};
}

/// Right end of the part of a circle that lies between the uprights at +-half_span, above its centre.
Point corner(Point centre, Length radius, Length half_span) {
    const double above = (radius - half_span).mm() * (radius + half_span).mm();
    return {half_span, centre.y + Length::mm(std::sqrt(std::max(0.0, above)))};
}

Point mirrored(Point p) { return {-p.x, p.y}; }

/// The arc over the top from the mirror image of a corner to the corner.
Path arc_to_corner(Point centre, Point right) {
    const double half = std::atan2((right.x - centre.x).mm(), (right.y - centre.y).mm());
    return Path::arc(mirrored(right), right, Angle::radians(-2 * half));
}

/// Lines across the casing that part the turn of its inside edge into equal shares.
std::vector<Path> joints(const Path& inside, Length width, int segments) {
    std::vector<Path> lines;
    for (int i = 1; i < segments; ++i) {
        const geom::Station at = inside.at(inside.length() * (static_cast<double>(i) / segments));
        lines.push_back(Path::line(at.point, at.point + at.direction.left() * width));
    }
    return lines;
}

std::vector<Path> ticks(const Path& wall, const Piece& piece) {
    std::vector<Path> lines;
    for (const Kerf& kerf : piece.kerfs) {
        const double from_zero = (kerf.at - piece.bend_start) / piece.bend_length();
        const double from_left = piece.zero == job::End::left ? from_zero : 1 - from_zero;
        const geom::Station at = wall.at(wall.length() * from_left);
        lines.push_back(Path::line(at.point, at.point - at.direction.left() * piece.kerf_depth));
    }
    return lines;
}

void add_legs(ArchLines& lines, const std::vector<Point>& corners, Length foot) {
    for (const Point right : corners)
        for (const Point top : {mirrored(right), right}) lines.leg_lines.push_back(Path::line(top, {top.x, foot}));
}

}  // namespace

ArchLines arch_lines(const Piece& piece, const curve::Curve& measured, const job::Opening& opening) {
    const Point centre = measured.path.segments().front().centre();
    const bool from_wall = piece.measured_to == job::Surface::wall;
    ArchLines lines;
    std::tie(lines.wall, lines.finish) = wall_and_finish(measured.path, piece);
    const Length half_span = opening.span.value / 2;
    lines.wall_half_span = from_wall ? half_span : half_span + piece.thickness;
    lines.finish_half_span = from_wall ? half_span - piece.thickness : half_span;
    lines.kerf_ticks = ticks(lines.wall, piece);
    if (opening.legs) lines.legs = opening.legs->value;

    std::vector<Point> corners{corner(centre, piece.wall_radius, lines.wall_half_span),
                               corner(centre, piece.finish_radius, lines.finish_half_span)};
    const Length foot = std::min(Length(), corners.back().y) - 1_in;
    if (opening.casing) {
        const Length reveal = opening.casing->reveal.value;
        const Length width = opening.casing->width.value;
        const Point in = corner(centre, piece.finish_radius + reveal, lines.finish_half_span + reveal);
        const Point out = corner(centre, piece.finish_radius + reveal + width, lines.finish_half_span + reveal + width);
        lines.casing_inside = arc_to_corner(centre, in);
        lines.casing_outside = arc_to_corner(centre, out);
        lines.mitres = {Path::line(mirrored(in), mirrored(out)), Path::line(in, out)};
        lines.segment_joints = joints(*lines.casing_inside, width, opening.casing->segments);
        corners.insert(corners.end(), {in, out});
    }
    add_legs(lines, corners, foot);
    return lines;
}

WallLines wall_lines(const Piece& piece, const curve::Curve& measured, std::array<Length, 2> tails) {
    std::vector<geom::Segment> segments = measured.path.segments();
    const geom::Segment first = segments.front();
    const geom::Segment last = segments.back();
    if (tails[0].mm() > 0)
        segments.insert(segments.begin(), {first.from - first.start_direction() * tails[0], first.from, {}});
    if (tails[1].mm() > 0) segments.push_back({last.to, last.to + last.end_direction() * tails[1], {}});
    auto [wall, finish] = wall_and_finish(Path(std::move(segments)), piece);
    return {std::move(wall), std::move(finish)};
}

}  // namespace kerfpacket::plan
