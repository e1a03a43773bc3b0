// Heads over the string from spring to spring, made of arcs that tilt with it: segmental, horseshoe, eyebrow.

#include <cmath>

#include "curve/arch.h"

namespace kerfpacket::curve {
namespace {

using geom::Segment;

/// Common practice has no limit; past this lean the feet of a horseshoe come so near each other that it is a slip.
constexpr Angle most_lean = Angle::degrees(150);
constexpr Angle plumb = Angle::degrees(90);

/// Rise over the string at which an arc's lower end has turned so far from level.
Length rise_at_lean(const Frame& frame, Angle lean) {
    return frame.string() / 2 * std::tan((lean - frame.tilt()).radians() / 2);
}

Curve over_string(const Frame& frame) {
    const Angle turn = turn_from_chord(frame.string(), frame.rise);
    return Curve({Segment{frame.left, frame.right, -turn}});
}

}  // namespace

Arch segmental(const Frame& frame) {
    const Length most = rise_at_lean(frame, plumb);
    if (frame.rise > most + slack)
        return refused(frame.opening.rise.at,
                       "rise " + frame.shown(frame.rise) + " is more than a segmental head over this span can have",
                       "expected at most " + shown_at_most(most, frame.units) +
                           "; a head that goes on past plumb is shape = \"horseshoe\"");
    return std::vector{over_string(frame)};
}

Arch horseshoe(const Frame& frame) {
    const Length least = rise_at_lean(frame, plumb);
    const Length most = rise_at_lean(frame, most_lean);
    if (frame.rise <= least + slack || frame.rise > most)
        return refused(frame.opening.rise.at,
                       "rise " + frame.shown(frame.rise) + " is too " + (frame.rise > most ? "much" : "little") +
                           " for a horseshoe head over this span",
                       "expected " + shown_above(least, frame.units) + " to " + shown_at_most(most, frame.units));
    return std::vector{over_string(frame)};
}

Arch eyebrow(const Frame& frame) {
    const Length most = rise_at_lean(frame, plumb);
    if (frame.rise > most + slack)
        return refused(
            frame.opening.rise.at,
            "rise " + frame.shown(frame.rise) + " is more than an eyebrow over this span can have",
            "expected at most " + shown_at_most(most, frame.units) + ": there the curve is plumb between its arcs");
    const Length half = frame.string() / 2;
    const Angle lean = Angle::radians(2 * std::atan2(frame.rise.mm(), half.mm()));
    const Length both_radii = half / std::sin(lean.radians());
    const Length reverse = frame.opening.reverse_radius ? frame.opening.reverse_radius->value : both_radii / 2;
    if (reverse >= both_radii - slack)
        return refused(frame.opening.reverse_radius->at,
                       "reverse_radius " + frame.shown(reverse) + " leaves no room for the arc between",
                       "expected at most " + shown_below(both_radii, frame.units) + " with this span and rise");
    const Angle slope = geom::direction(frame.left, frame.right).angle();
    const Point joint{reverse * std::sin(lean.radians()) - half, reverse * (1 - std::cos(lean.radians()))};
    const Point first = geom::turned(joint, slope);
    const Point second = geom::turned(Point{-joint.x, joint.y}, slope);
    return std::vector{Curve(
        {Segment{frame.left, first, lean}, Segment{first, second, lean * -2.0}, Segment{second, frame.right, lean}})};
}

}  // namespace kerfpacket::curve
