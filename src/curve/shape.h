#pragma once
// What was measured becomes an outline: arches in elevation, walls in plan.

#include <optional>
#include <utility>

#include <tl/expected.hpp>

#include "curve/outline.h"
#include "curve/survey.h"
#include "job/job.h"

namespace kerfpacket::curve {

/// A head in elevation, on the surface that was measured: y up, origin in the middle of the span on the line that joins
/// the springs (level unless the springs differ: then they stand as much above as below the origin). Travel is from
/// the left foot up the left leg, over the arch to the right, down the right leg: left of travel is outward, into the
/// wall. The first and the last run are the legs, straight and upright, as long as the job says or an inch where it
/// does not say.
struct Head {
    Outline outline;
    Length span;  ///< level distance of the springs
    Length rise;  ///< of the curve over the middle of the line that joins the springs
    std::optional<Survey> survey;

    const Curve& left_leg() const { return outline.runs().front(); }
    const Curve& right_leg() const { return outline.runs().back(); }
};

/// A wall's curved part in plan, seen from above, from its left end to its right end as seen from the room, on the
/// surface that was measured; origin in the middle of its chord, the chord along x, the room below (negative y). A
/// concave wall bulges away from the room (up), a convex one toward it (down). One run, without tails. With ordinates
/// x runs along the string between the measured ends; the curve's ends stray from it as little as they miss those.
struct Course {
    Curve curve;
    Length chord;
    Length rise;  ///< greatest distance from the chord
    std::optional<Survey> survey;
};

/// Radius of the circle through the ends of a chord and the crown at height `rise`: (c^2 + 4 h^2)/(8 h).
/// Source: Building Trades Pocketbook (International Correspondence Schools).
Length radius_from_chord(Length chord, Length rise);
/// Angle that the arc over a chord turns through; more than 180 degrees when the rise is over half the chord.
Angle turn_from_chord(Length chord, Length rise);

/// Whether past its ends, to the mitre of a wide casing, a shape goes on straight: those that run out in a reverse
/// curve, and measured points. Others go on by their own law, an arc as its circle.
bool goes_on_straight(job::Shape shape);

/// The level width of a head where it is widest, on the measured surface: more than the span where the arch goes on
/// past plumb, as a horseshoe does.
Length widest(const Head& head);

/// Or what the measurements cannot be, and what would be possible. `units` for the messages.
tl::expected<Head, job::Diagnostics> head(const job::Opening& opening, measure::Unit units);
tl::expected<Course, job::Diagnostics> course(const job::Wall& wall, measure::Unit units);

}  // namespace kerfpacket::curve
