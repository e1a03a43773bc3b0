// Walls in plan.

#include <cmath>

#include "curve/arch.h"

namespace kerfpacket::curve {
namespace {

/// An arc over a chord that lies along x around the origin.
Course arc_over_chord(Length chord, Angle turn, bool up) {
    const geom::Segment arc{{-chord / 2, {}}, {chord / 2, {}}, up ? -turn : turn};
    // Rise over half the chord is the tangent of a quarter of the turn.
    return {Curve({arc}), chord, chord / 2 * std::tan(turn.radians() / 4), std::nullopt};
}

/// The measured points with the string between their ends along x, its middle at the origin. Those of a convex wall
/// stand below their base line.
std::vector<Point> on_string(const job::Ordinates& given, bool up) {
    std::vector<Point> points;
    for (const job::Ordinate& p : given.points)
        points.push_back({p.station.value, up ? p.height.value : -p.height.value});
    const Angle slope = geom::direction(points.front(), points.back()).angle();
    const Point middle = geom::middle(points.front(), points.back());
    for (Point& p : points) p = geom::turned(p - middle, -slope);
    return points;
}

tl::expected<Course, job::Diagnostics> surveyed(const job::Wall& wall, bool up, measure::Unit units) {
    auto found = measured(on_string(*wall.ordinates, up), *wall.ordinates, 2 * wall.board.thickness.value, units);
    if (!found) return tl::unexpected(found.error());
    Measured there = centred(std::move(*found));
    const geom::Rect box = there.curve.path().bounds();
    const Length chord = geom::distance(there.curve.at({}).point, there.curve.at(there.curve.length()).point);
    return Course{std::move(there.curve), chord, std::max(box.high.y, -box.low.y), std::move(there.survey)};
}

}  // namespace

tl::expected<Course, job::Diagnostics> course(const job::Wall& wall, measure::Unit units) {
    const bool up = wall.side.value == job::Side::concave;
    if (wall.ordinates) return surveyed(wall, up, units);
    if (wall.radius && wall.angle) {
        const Angle turn = wall.angle->value;
        return arc_over_chord(2 * wall.radius->value * std::sin(turn.radians() / 2), turn, up);
    }
    const Length chord = wall.chord.value().value;
    const Length rise = wall.rise.value().value;
    if (rise > chord / 2 + slack)
        return refused(
            wall.rise->at,
            job::say("half_chord", "rise {rise} is more than half the chord, {half}",
                     {{"rise", job::shown(rise, units)}, {"half", job::shown(chord / 2, units)}}),
            job::say("half_chord_do", "a wall turns at most a half circle: is the chord measured straight across?"));
    return arc_over_chord(chord, turn_from_chord(chord, rise), up);
}

}  // namespace kerfpacket::curve
