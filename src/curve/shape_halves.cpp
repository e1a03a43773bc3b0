// Heads of arcs whose halves stand each on its own spring: three-centred and pointed; and how halves are joined.

#include <cmath>

#include "curve/arch.h"
#include "curve/stretch.h"

namespace kerfpacket::curve {
namespace {

using geom::Segment;
using job::say;

constexpr Angle plumb = Angle::degrees(90);

/// x y / z.
Length product(Length x, Length y, Length z) { return x * (y / z); }

/// Side arc of radius `side` from the spring, then the crown arc that is tangent to it and level at the crown:
/// R = (a^2 + b^2 - 2 a r) / (2 (b - r)).
HalfArch three_centred_half(Length half, Length rise, Length side) {
    const Length below = 2 * (rise - side);
    // Of the crown arc's centre under the spring; R - b in factors, which keeps digits.
    const Length drop = product(half - rise, half + rise - 2 * side, below);
    const Angle crown = Angle::radians(std::atan2((half - side).mm(), drop.mm()));
    const Direction out{-std::sin(crown.radians()), std::cos(crown.radians())};
    const Point joint = Point{side - half, {}} + out * side;
    return {{{-half, {}}, joint, crown - plumb}, {joint, {{}, rise}, -crown}};
}

/// The classical construction of a three-centred head: with c the line from spring to crown, half of what is left of it
/// when the excess of half the span over the rise is cut off, turned onto the spring line:
/// r = (c/2) (c - (a - b)) / a.
Length classical_side_radius(Length half, Length rise) {
    const Length c = measure::hypot(half, rise);
    return product(c / 2, c - (half - rise), half);
}

/// One arc that leaves the spring plumb: its centre is on the spring line.
HalfArch pointed_half(Length half, Length rise) {
    return {{{-half, {}}, {{}, rise}, Angle::radians(-2 * std::atan2(half.mm(), rise.mm()))}};
}

job::Told under_half_span(Length most, const Frame& frame) {
    return say("under_half", "expected less than half the span: at most {most}",
               {{"most", shown_below(most, frame.units)}});
}

const job::Sourced<Length>& longer_leg(const Frame& frame) {
    const auto& legs = frame.opening.legs.value();
    return legs[0].value > legs[1].value ? legs[0] : legs[1];
}

}  // namespace

std::optional<job::Diagnostics> half_without_rise(const Frame& frame) {
    if (frame.least_rise() > slack) return std::nullopt;
    const Length apart = measure::abs(frame.left.y - frame.right.y);
    const bool rise_given = frame.opening.rise.at.line > 0;
    const job::Told most = shown_below(2 * frame.rise, frame.units);
    return refused(longer_leg(frame).at,
                   say("half_no_rise", "legs that differ by {apart} leave half of this head without a rise",
                       {{"apart", frame.shown(apart)}}),
                   rise_given ? say("rise_or_legs",
                                    "expected a rise of at least {least}, or legs that differ by at most {most}",
                                    {{"least", shown_above(apart / 2, frame.units)}, {"most", most}})
                              : say("legs_most", "expected legs that differ by at most {most}", {{"most", most}}))
        .value();
}

std::vector<Curve> joined(const Frame& frame, const HalfArch& left, const HalfArch& right, bool smooth) {
    std::vector<Stretch> first;
    std::vector<Stretch> second;
    for (const Segment& s : left) first.push_back(moved(Stretch(s), {{}, frame.left.y}));
    for (const Segment& s : right)
        second.insert(second.begin(), moved(Stretch(s.mirrored_left_right().reversed()), {{}, frame.right.y}));
    if (!smooth) return {Curve(std::move(first)), Curve(std::move(second))};
    if (frame.level()) {
        // One arc over the crown, not two of the same circle.
        auto& crown = std::get<Segment>(first.back());
        const auto& rest = std::get<Segment>(second.front());
        crown = {crown.from, rest.to, crown.turn + rest.turn};
        second.erase(second.begin());
    }
    first.insert(first.end(), second.begin(), second.end());
    return {Curve(std::move(first))};
}

Arch three_centred(const Frame& frame) {
    const Length half = frame.half();
    const Length apart = measure::abs(frame.left.y - frame.right.y);
    // More than nothing over the higher spring is then too much over the lower one.
    if (apart >= half - slack)
        return refused(longer_leg(frame).at,
                       say("legs_uneven", "legs that differ by {apart} are too uneven for a {shape} head",
                           {{"apart", frame.shown(apart)}, {"shape", shape_word("three-centred")}}),
                       under_half_span(half, frame));
    if (auto wrong = half_without_rise(frame)) return tl::unexpected(*wrong);
    if (frame.most_rise() >= half - slack) {
        const Length most = half - apart / 2;
        return refused(
            frame.opening.rise.at, rise_more(frame.shown(frame.rise), "three-centred"),
            frame.level()
                ? say("under_half_or_whole", R"({least}; at half the span it is shape = "semicircular")",
                      {{"least", under_half_span(most, frame)}})
                : say("under_half_legs", "{least} with these legs", {{"least", under_half_span(most, frame)}}));
    }
    const auto& given = frame.opening.side_radius;
    if (given && given->value >= frame.least_rise() - slack)
        return refused(given->at,
                       say("side_large_rise", "side_radius {radius} is too large to meet a crown arc at this rise",
                           {{"radius", frame.shown(given->value)}}),
                       say("under_rise", "expected less than the rise over the spring: at most {most}",
                           {{"most", shown_below(frame.least_rise(), frame.units)}}));
    const auto built = [&](Length rise) {
        return three_centred_half(half, rise, given ? given->value : classical_side_radius(half, rise));
    };
    return joined(frame, built(frame.left_rise()), built(frame.right_rise()), true);
}

Arch pointed(const Frame& frame) {
    const Length half = frame.half();
    if (const auto& radius = frame.opening.radius) {
        if (radius->value <= half + slack)
            return refused(
                radius->at,
                say("radius_half",
                    "radius {radius} is no more than half the span, {half}: the sides do not meet at a point",
                    {{"radius", frame.shown(radius->value)}, {"half", frame.shown(half)}}),
                say("radius_half_do", "expected at least {least}; the full span gives the equilateral head",
                    {{"least", shown_above(half, frame.units)}}));
        if (!frame.level())
            return refused(radius->at, say("one_radius", "radius does not fit springs that stand at different heights"),
                           say("two_radii", "the two sides then have radii of their own: give rise instead of radius"));
    }
    if (auto wrong = half_without_rise(frame)) return tl::unexpected(*wrong);
    if (frame.least_rise() <= half + slack)
        return refused(frame.opening.rise.at, rise_less(frame.shown(frame.rise), "pointed"),
                       say("pointed_least",
                           "expected more than half the span over each spring: at least {least}; a low pointed head "
                           "is shape = \"tudor\"",
                           {{"least", shown_above(frame.rise - frame.least_rise() + half, frame.units)}}));
    return joined(frame, pointed_half(half, frame.left_rise()), pointed_half(half, frame.right_rise()), false);
}

}  // namespace kerfpacket::curve
