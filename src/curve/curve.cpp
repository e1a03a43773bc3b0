#include "curve/curve.h"

#include <cmath>

namespace kerfpacket::curve {
namespace {

using geom::Point;

/// An arc over a chord that lies along x around the origin, bulging up when `up`.
Curve arc_over_chord(Length chord, Length radius, Angle turn, bool up) {
    const Point left{-chord / 2, {}};
    const Point right{chord / 2, {}};
    return {Path::arc(left, right, up ? -turn : turn), radius, turn};
}

}  // namespace

Length radius_from_chord(Length chord, Length rise) { return chord * (chord / (8 * rise)) + rise / 2; }

Angle turn_from_chord(Length chord, Length rise) { return Angle::radians(4 * std::atan(2 * rise / chord)); }

Curve measured_curve(const job::Opening& opening) {
    const Length span = opening.span.value;
    const Length rise = opening.rise.value;
    return arc_over_chord(span, radius_from_chord(span, rise), turn_from_chord(span, rise), true);
}

Curve measured_curve(const job::Wall& wall) {
    const bool up = wall.side.value == job::Side::concave;
    if (wall.chord && wall.rise) {
        const Length chord = wall.chord->value;
        const Length rise = wall.rise->value;
        return arc_over_chord(chord, radius_from_chord(chord, rise), turn_from_chord(chord, rise), up);
    }
    const Length radius = wall.radius.value().value;
    const Angle turn = wall.angle.value().value;
    return arc_over_chord(2 * radius * std::sin(turn.radians() / 2), radius, turn, up);
}

}  // namespace kerfpacket::curve
