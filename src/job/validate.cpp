#include "job/validate.h"

#include <cmath>
#include <variant>

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

/// Rounding between units must not turn an exact fit into a mistake.
constexpr Length slack = 0.001_mm;

/// Radius of a circular segment from its chord c and rise h: (c^2 + 4 h^2) / (8 h), as in Building Trades Pocketbook.
Length segment_radius(Length chord, Length rise) { return chord * (chord / rise) / 8 + rise / 2; }

/// Straighter than that a jamb is square to its wall, flatter it is no bend: judgement.
constexpr double least_splay = 1;
constexpr double most_splay = 60;

bool springs_differ(const Opening& opening) {
    return opening.legs && abs(opening.legs->at(0).value - opening.legs->at(1).value) > slack;
}

/// Length of the line that joins the springs: the span where they are level.
Length string_of(const Opening& opening) {
    if (!springs_differ(opening)) return opening.span.value;
    return hypot(opening.span.value, opening.legs->at(0).value - opening.legs->at(1).value);
}

/// The board's inner face needs a radius of its own: the thickness must stay under the measured radius when the board
/// lies inside the measured surface.
void check_room(Context& context, const Sourced<Length>& thickness, Length radius, bool board_lies_inside) {
    if (!known(thickness) || !board_lies_inside || thickness.value < radius) return;
    context.error(thickness.at, "thickness " + context.shown(thickness.value) + " is more than the curve has room for",
                  "the radius it lies in is only " + context.shown(radius));
}

/// Slopes that are none.
void check_slope(Context& context, const Splay& splay, Length depth) {
    const double degrees = splay.angle(depth).degrees();
    if (degrees >= least_splay && degrees <= most_splay) return;
    const auto side = [&](double of) { return context.shown(depth * std::tan(Angle::degrees(of).radians())); };
    context.error(std::visit([](const auto& by) { return by.at; }, splay.by),
                  degrees < least_splay ? "this jamb hardly splays at all"
                                        : "this jamb lies nearly flat: nothing is left to bend",
                  "expected 1 to 60 degrees from square to the wall, over this depth a side of " + side(least_splay) +
                      " to " + side(most_splay));
}

/// What a splayed jamb does not have.
void check_splay(Context& context, const Opening& opening) {
    if (!opening.splay) return;
    if (known(opening.liner.width)) check_slope(context, *opening.splay, opening.liner.width.value);
    if (opening.form)
        context.error(opening.form->at, "no rib is drawn for a splayed jamb",
                      "its form has ribs of as many sizes as places: leave [opening.form] out");
    if (opening.through_legs)
        context.error(opening.splay->at, "the liner of a splayed jamb does not run on down its legs",
                      "leave through_legs out: each leg is a flat board, its edges bevelled");
    if (!opening.liner.kerfs.empty())
        context.error(opening.liner.kerfs.front().at, "kerfs cannot be given one by one for a splayed jamb",
                      "they stand along its straight lines: give a spacing at the narrow edge, or leave it to "
                      "\"solve\"");
    if (opening.liner.strip.value == StripOn::edge)
        context.error(opening.liner.strip.at, "the liner of a splayed jamb takes no strip: none of its edges is straight",
                      "leave strip out: it is marked by a full-size template of the flat blank, stuck on its face");
}

}  // namespace

void check_head(Context& context, const Opening& opening) {
    if (!known(opening.shape) || !known(opening.span) || !known(opening.rise)) return;
    const Length half = string_of(opening) / 2;
    const Length over = opening.rise.value - half;
    const std::string rise = "rise " + context.shown(opening.rise.value);
    if (opening.shape.value == Shape::segmental && over > slack) {
        const std::string across =
            springs_differ(opening) ? "half the line that joins the springs, " : "half the span, ";
        context.error(opening.rise.at, rise + " is more than " + across + context.shown(half),
                      "a segmental head rises at most half its span; one that rises more is shape = \"horseshoe\"");
    } else if (opening.shape.value == Shape::semicircular &&
               abs(opening.rise.value - opening.span.value / 2) > finest + slack) {
        context.error(opening.rise.at, rise + " is not half the span, " + context.shown(opening.span.value / 2),
                      "a semicircular head rises half its span: leave rise out, or use shape = \"segmental\"");
    }
}

void check_liner(Context& context, const Opening& opening) {
    check_splay(context, opening);
    if (!known(opening.shape) || !known(opening.span)) return;
    // With springs that differ a half circle becomes two quarter ellipses, and is judged as a curve.
    const bool half_circle = opening.shape.value == Shape::semicircular && !springs_differ(opening);
    const bool segment = opening.shape.value == Shape::segmental && known(opening.rise);
    if (!half_circle && !segment) return;
    const Length string = string_of(opening);
    if (segment && opening.rise.value > string / 2 + slack) return;
    const Length radius = half_circle ? string / 2 : segment_radius(string, opening.rise.value);
    check_room(context, opening.liner.thickness, radius, opening.measured_to == Surface::wall);
}

namespace {

/// What is not drawn of a board that climbs.
void check_rake(Context& context, const Wall& wall) {
    if (!wall.rake) return;
    if (wall.form)
        context.error(wall.form->at, "no rib is drawn for a board that climbs",
                      "a form for it twists from end to end: leave [wall.form] out");
    if (!wall.board.kerfs.empty())
        context.error(wall.board.kerfs.front().at, "kerfs cannot be given one by one for a board that climbs",
                      "they stand askew on it: give a spacing, square to the kerfs, or leave it to \"solve\"");
}

}  // namespace

void check_wall(Context& context, const Wall& wall) {
    check_rake(context, wall);
    std::optional<Length> radius;
    if (wall.chord && wall.rise) {
        const Length half = wall.chord->value / 2;
        if (wall.rise->value > half + slack) {
            context.error(
                wall.rise->at,
                "rise " + context.shown(wall.rise->value) + " is more than half the chord, " + context.shown(half),
                "a wall turns at most a half circle: is the chord measured straight across?");
            return;
        }
        radius = segment_radius(wall.chord->value, wall.rise->value);
    } else if (wall.radius && wall.angle) {
        radius = wall.radius->value;
        if (arc_length(*radius, wall.angle->value) > longest)
            context.error(wall.radius->at, "this curve is longer than any wall this program takes",
                          "radius times angle gives more than 1000 ft, which is 304.8 m");
    }
    if (!radius || !known(wall.side)) return;
    // On a concave wall the board stands inside the wall's curve; on a convex one inside the curve of its seen face.
    const bool lies_inside = (wall.side.value == Side::concave) == (wall.measured_to == Surface::wall);
    check_room(context, wall.board.thickness, *radius, lies_inside);
}

}  // namespace kerfpacket::job
