// Heads of arcs whose halves stand each on its own spring: three-centred and pointed; and how halves are joined.

#include <cmath>

#include "curve/arch.h"
#include "curve/stretch.h"

namespace kerfpacket::curve {
namespace {

using geom::Segment;

constexpr Angle plumb = Angle::degrees(90);

/// x y / z.
Length product(Length x, Length y, Length z) { return x * (y / z); }

Segment mirrored_back(const Segment& s) { return {{-s.to.x, s.to.y}, {-s.from.x, s.from.y}, s.turn}; }

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

const job::Sourced<Length>& longer_leg(const Frame& frame) {
    const auto& legs = frame.opening.legs.value();
    return legs[0].value > legs[1].value ? legs[0] : legs[1];
}

}  // namespace

std::optional<job::Diagnostics> half_without_rise(const Frame& frame) {
    if (frame.least_rise() > slack) return std::nullopt;
    const Length apart = measure::abs(frame.left.y - frame.right.y);
    const bool rise_given = frame.opening.rise.at.line > 0;
    const std::string most = "legs that differ by at most " + shown_below(2 * frame.rise, frame.units);
    const std::string least = "a rise of at least " + shown_above(apart / 2, frame.units) + ", or ";
    return refused(longer_leg(frame).at,
                   "legs that differ by " + frame.shown(apart) + " leave half of this head without a rise",
                   "expected " + (rise_given ? least : "") + most)
        .value();
}

std::vector<Curve> joined(const Frame& frame, const HalfArch& left, const HalfArch& right, bool smooth) {
    std::vector<Stretch> first;
    std::vector<Stretch> second;
    for (const Segment& s : left) first.push_back(moved(Stretch(s), {{}, frame.left.y}));
    for (const Segment& s : right) second.insert(second.begin(), moved(Stretch(mirrored_back(s)), {{}, frame.right.y}));
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
                       "legs that differ by " + frame.shown(apart) + " are too uneven for a three-centred head",
                       "expected less than half the span: at most " + shown_below(half, frame.units));
    if (auto wrong = half_without_rise(frame)) return tl::unexpected(*wrong);
    if (frame.most_rise() >= half - slack) {
        const Length most = half - apart / 2;
        return refused(frame.opening.rise.at,
                       "rise " + frame.shown(frame.rise) + " is more than a three-centred head over this span can have",
                       "expected less than half the span: at most " + shown_below(most, frame.units) +
                           (frame.level() ? "; at half the span it is shape = \"semicircular\"" : " with these legs"));
    }
    const auto& given = frame.opening.side_radius;
    if (given && given->value >= frame.least_rise() - slack)
        return refused(
            given->at, "side_radius " + frame.shown(given->value) + " is too large to meet a crown arc at this rise",
            "expected less than the rise over the spring: at most " + shown_below(frame.least_rise(), frame.units));
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
                "radius " + frame.shown(radius->value) + " is no more than half the span, " + frame.shown(half) +
                    ": the sides do not meet at a point",
                "expected at least " + shown_above(half, frame.units) + "; the full span gives the equilateral head");
        if (!frame.level())
            return refused(radius->at, "radius does not fit springs that stand at different heights",
                           "the two sides then have radii of their own: give rise instead of radius");
    }
    if (auto wrong = half_without_rise(frame)) return tl::unexpected(*wrong);
    if (frame.least_rise() <= half + slack)
        return refused(frame.opening.rise.at,
                       "rise " + frame.shown(frame.rise) + " is too little for a pointed head over this span",
                       "expected more than half the span over each spring: at least " +
                           shown_above(frame.rise - frame.least_rise() + half, frame.units) +
                           "; a low pointed head is shape = \"tudor\"");
    return joined(frame, pointed_half(half, frame.left_rise()), pointed_half(half, frame.right_rise()), false);
}

}  // namespace kerfpacket::curve
