#include "plan/make_lines.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;

/// How far a parallel's two halves may differ and the head still counts as symmetric.
constexpr Length same = 0.001_mm;

/// The runs of the arch alone as one path.
Path between_legs(const std::vector<Path>& runs) {
    std::vector<geom::Segment> segments;
    for (std::size_t i = 1; i + 1 < runs.size(); ++i)
        segments.insert(segments.end(), runs[i].segments().begin(), runs[i].segments().end());
    return Path(std::move(segments));
}

Point mirrored(Point p) { return {-p.x, p.y}; }

bool is_symmetric(const Path& line) {
    const Length length = line.length();
    for (int i = 0; i <= 16; ++i) {
        const Length at = length * (i / 16.0);
        const Point left = line.at(at).point;
        const Point right = line.at(length - at).point;
        if (geom::distance(mirrored(left), right) > same) return false;
    }
    return true;
}

/// The arcs that a head is made of; none when it is made of anything else.
std::vector<Trammel> arcs_of(const curve::Head& head) {
    const auto& runs = head.outline.runs();
    std::vector<Trammel> arcs;
    for (std::size_t i = 1; i + 1 < runs.size(); ++i) {
        if (!runs[i].is_exact_path()) return {};
        const Path path = runs[i].path();
        for (const geom::Segment& s : path.segments()) {
            if (s.is_line()) return {};
            arcs.push_back({s.centre(), s.radius(), s.from, s.to});
        }
    }
    return arcs;
}

}  // namespace

Path arch_parallel(const curve::Head& head, Length left) { return between_legs(head.outline.parallel(left)); }

ArchLines arch_lines(const curve::Head& head, const job::Opening& opening) {
    const Faces face = room_faces(opening);
    ArchLines lines;
    lines.measured = between_legs(head.outline.parallel({}));
    const auto wall = head.outline.parallel(face.wall);
    const auto finish = head.outline.parallel(face.finish);
    lines.wall = between_legs(wall);
    lines.finish = between_legs(finish);
    lines.wall_springs = {lines.wall.start(), lines.wall.end()};
    lines.finish_springs = {lines.finish.start(), lines.finish.end()};
    const std::size_t corners = wall.size() - 1;
    for (std::size_t i = 0; i < corners; ++i) {
        const bool at_leg = i == 0 || i + 1 == corners;
        if (!head.outline.has_corner(i) || (at_leg && !opening.legs) || opening.splay) continue;
        lines.liner_mitres.push_back(Path::line(wall[i].end(), finish[i].end()));
    }
    if (opening.legs) lines.legs = {{(*opening.legs)[0].value, (*opening.legs)[1].value}};
    lines.arcs = arcs_of(head);
    lines.symmetric = is_symmetric(lines.wall);
    return lines;
}

void add_leg_lines(ArchLines& lines) {
    std::vector<std::pair<Point, Point>> corners;
    for (const Path* line : {&lines.wall, &lines.finish}) corners.emplace_back(line->start(), line->end());
    for (const auto& edge : {lines.casing_inside, lines.casing_outside})
        if (edge) corners.emplace_back(edge->start(), edge->end());
    Length foot;
    for (const auto& [left, right] : corners) foot = std::min({foot, left.y, right.y});
    foot -= 1_in;
    for (const auto& [left, right] : corners)
        for (const Point top : {left, right}) lines.leg_lines.push_back(Path::line(top, {top.x, foot}));
}

namespace {

std::vector<Length> across_leg(const curve::Head& head, const job::Opening& opening, std::size_t leg) {
    std::vector<Length> across;
    if (opening.splay)
        for (const Faces& there : faces_across(opening))
            across.push_back(head.outline.parallel(there.finish)[leg].length());
    return across;
}

}  // namespace

std::vector<LegBoard> leg_boards(const curve::Head& head, const job::Opening& opening) {
    std::vector<LegBoard> boards;
    if (!opening.legs || (!opening.through_legs && !opening.splay)) return boards;
    const Faces face = narrow_faces(opening);
    const auto wall = head.outline.parallel(face.wall);
    const auto finish = head.outline.parallel(face.finish);
    const auto wide = head.outline.parallel(face.finish + splayed_side(opening));
    for (const job::End side : {job::End::left, job::End::right}) {
        const std::size_t leg = side == job::End::left ? 0 : wall.size() - 1;
        const std::size_t corner = side == job::End::left ? 0 : leg - 1;
        if (!head.outline.has_corner(corner) && !opening.splay) continue;
        if (finish[leg].length() <= Length()) continue;
        const Angle mitre = head.outline.has_corner(corner)
                                ? Angle::radians(std::abs(head.outline.corner(corner).radians()) / 2)
                                : Angle();
        boards.push_back({side, wall[leg].length(), finish[leg].length(), mitre,
                          wide[leg].length() - finish[leg].length(), across_leg(head, opening, leg)});
    }
    return boards;
}

void add_kerf_ticks(ArchLines& lines, const Piece& piece, const Request& board) {
    const Faces square = faces(piece.measured_to, piece.cut.thickness);
    const Faces face = in_plane(square, board.splay, &Opened::room);
    const Length depth = board.splay ? piece.cut.depth / board.splay->cosine() : piece.cut.depth;
    const Blank& blank = piece.blank();
    for (const Kerf& kerf : blank.kerfs) {
        // Wood beyond a bend without tails is trim, which is cut off.
        if (kerf.on_curve < blank.covers[0] - same || kerf.on_curve > blank.covers[1] + same) continue;
        // On a tail the board is straight, whatever law the curve would go on by.
        const Length straight = board.tails[0] > 0_mm && kerf.on_curve < 0_mm ? kerf.on_curve
                                : board.tails[1] > 0_mm && kerf.on_curve > board.curve.length()
                                    ? kerf.on_curve - board.curve.length()
                                    : 0_mm;
        const curve::Spot spot = board.curve.at(kerf.on_curve - straight);
        const Point back = spot.point + spot.direction * straight + spot.direction.left() * face.wall;
        lines.kerf_ticks.push_back({Path::line(back, back - spot.direction.left() * depth), piece.board, kerf.n});
    }
}

WallLines wall_lines(const Request& board) {
    const auto with_tails = [&](Length left) {
        std::vector<geom::Segment> segments = board.curve.parallel(left).path().segments();
        const geom::Segment first = segments.front();
        const geom::Segment last = segments.back();
        if (board.tails[0].mm() > 0)
            segments.insert(segments.begin(), {first.from - first.start_direction() * board.tails[0], first.from, {}});
        if (board.tails[1].mm() > 0) segments.push_back({last.to, last.to + last.end_direction() * board.tails[1], {}});
        return Path(std::move(segments));
    };
    const Faces face = faces(board.measured_to, board.wanted->thickness.value);
    return {with_tails(face.wall), with_tails(face.finish), board.tails};
}

}  // namespace kerfpacket::plan
