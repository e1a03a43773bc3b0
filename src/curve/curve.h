#pragma once
// What was measured becomes a curve: arches in elevation, walls in plan.

#include "geom/path.h"
#include "job/job.h"

namespace kerfpacket::curve {

using geom::Angle;
using geom::Length;
using geom::Path;

/// A measured curve of constant curvature.
/// An arch: in elevation, from left spring to right spring, origin in the middle of the span on the spring line, y up;
/// travel turns to the right, so left of travel is outward (up).
/// A wall: in plan as seen from above, from the left end of the curve to its right end as seen from the room, origin
/// in the middle of the chord, the chord along x; the room is below (negative y). A concave wall bulges away from
/// the room (up), a convex one toward it (down).
struct Curve {
    Path path;  ///< the curved part only, without tails or legs
    Length radius;
    Angle turn;  ///< magnitude
};

/// Radius of the circle through the ends of a chord and the crown at height `rise`: (c^2 + 4 h^2)/(8 h).
/// Source: Building Trades Pocketbook (International Correspondence Schools).
Length radius_from_chord(Length chord, Length rise);
/// Angle that the arc over a chord turns through; more than 180 degrees when the rise is over half the chord.
Angle turn_from_chord(Length chord, Length rise);

/// Values were validated by the job reader.
Curve measured_curve(const job::Opening& opening);
Curve measured_curve(const job::Wall& wall);

}  // namespace kerfpacket::curve
