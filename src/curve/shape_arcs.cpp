// Heads over the string from spring to spring, made of arcs that tilt with it: segmental, horseshoe, eyebrow.

#include <cmath>

#include "curve/arch.h"

namespace kerfpacket::curve {
namespace {

using geom::Segment;
using job::say;

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
        return refused(
            frame.opening.rise.at, rise_more(frame.shown(frame.rise), "segmental"),
            say("segmental_most", R"(expected at most {most}; a head that goes on past plumb is shape = "horseshoe")",
                {{"most", shown_at_most(most, frame.units)}}));
    return std::vector{over_string(frame)};
}

Arch horseshoe(const Frame& frame) {
    const Length least = rise_at_lean(frame, plumb);
    const Length most = rise_at_lean(frame, most_lean);
    if (frame.rise <= least + slack || frame.rise > most)
        return refused(frame.opening.rise.at,
                       frame.rise > most ? rise_much(frame.shown(frame.rise), "horseshoe")
                                         : rise_less(frame.shown(frame.rise), "horseshoe"),
                       say("from_to", "expected {least} to {most}",
                           {{"least", shown_above(least, frame.units)}, {"most", shown_at_most(most, frame.units)}}));
    return std::vector{over_string(frame)};
}

Arch eyebrow(const Frame& frame) {
    const Length most = rise_at_lean(frame, plumb);
    if (frame.rise > most + slack)
        return refused(frame.opening.rise.at,
                       say("rise_more_eyebrow", "rise {rise} is more than an eyebrow over this span can have",
                           {{"rise", frame.shown(frame.rise)}}),
                       say("most_plumb", "expected at most {most}: there the curve is plumb between its arcs",
                           {{"most", shown_at_most(most, frame.units)}}));
    const Length half = frame.string() / 2;
    const Angle lean = Angle::radians(2 * std::atan2(frame.rise.mm(), half.mm()));
    const Length both_radii = half / std::sin(lean.radians());
    const Length reverse = frame.opening.reverse_radius ? frame.opening.reverse_radius->value : both_radii / 2;
    if (reverse >= both_radii - slack)
        return refused(frame.opening.reverse_radius->at,
                       say("reverse", "reverse_radius {radius} leaves no room for the arc between",
                           {{"radius", frame.shown(reverse)}}),
                       say("most_here", "expected at most {most} with this span and rise",
                           {{"most", shown_below(both_radii, frame.units)}}));
    const Angle slope = geom::direction(frame.left, frame.right).angle();
    const Point joint{reverse * std::sin(lean.radians()) - half, reverse * (1 - std::cos(lean.radians()))};
    const Point first = geom::turned(joint, slope);
    const Point second = geom::turned(Point{-joint.x, joint.y}, slope);
    return std::vector{Curve(
        {Segment{frame.left, first, lean}, Segment{first, second, lean * -2.0}, Segment{second, frame.right, lean}})};
}

}  // namespace kerfpacket::curve
