#include <algorithm>
#include <cmath>

#include "geom/path.h"

namespace kerfpacket::geom {
namespace {

double half_turn(const Segment& s) { return s.turn.radians() / 2; }

/// sin(x)/x, smooth at 0, so that very flat arcs lose no digits.
double sinc(double x) { return std::abs(x) < 1e-4 ? 1 - x * x / 6 : std::sin(x) / x; }

}  // namespace

Length Segment::length() const { return chord() / sinc(half_turn(*this)); }

Length Segment::radius() const { return measure::abs(length() / turn.radians()); }

Direction Segment::start_direction() const { return direction(from, to).turned(turn * -0.5); }
Direction Segment::end_direction() const { return direction(from, to).turned(turn * 0.5); }

/// From the middle of the chord, as far as half the chord over the tangent of half the turn.
Point Segment::centre() const {
    const Direction half = Direction::at(turn * 0.5);
    const double part = half.x / (2 * half.y);
    return middle(from, to) + Point{(from.y - to.y) * part, (to.x - from.x) * part};
}

Point Segment::point(double fraction) const {
    if (fraction <= 0) return from;
    if (fraction >= 1) return to;
    if (is_line()) return from + (to - from) * fraction;
    // The chord from the start to the point leaves at half the turn made so far.
    const double reach = fraction * sinc(half_turn(*this) * fraction) / sinc(half_turn(*this));
    return from + turned(to - from, turn * ((fraction - 1) / 2)) * reach;
}

Direction Segment::direction_at(double fraction) const { return direction(from, to).turned(turn * (fraction - 0.5)); }

Segment Segment::part(double a, double b) const { return {point(a), point(b), turn * (b - a)}; }

Rect Segment::bounds() const {
    Rect box{from, from};
    box = united(box, {to, to});
    if (is_line()) return box;
    // An arc reaches further where its direction of travel is level or upright.
    const double start = start_direction().angle().radians();
    const double quarter = Angle::pi / 2;
    const double sweep = turn.radians();
    const double low = std::min(start, start + sweep);
    const double high = std::max(start, start + sweep);
    for (double k = std::ceil(low / quarter); k * quarter < high; ++k) {
        const Point extreme = point((k * quarter - start) / sweep);
        box = united(box, {extreme, extreme});
    }
    return box;
}

std::vector<double> crossings(const Segment& segment, Point on_line, Direction along) {
    const Direction normal = along.left();
    const auto side = [&](Point p) { return (p.x - on_line.x) * normal.x + (p.y - on_line.y) * normal.y; };
    std::vector<double> found;
    // Where two segments join on the line, rounding must not hide the crossing from both.
    const double hair = Length::mm(1e-6) / std::max(segment.chord(), Length::mm(1e-3));
    const auto take = [&](double f) {
        if (f >= -hair && f <= 1 + hair) found.push_back(std::clamp(f, 0.0, 1.0));
    };
    if (segment.is_line()) {
        const Length a = side(segment.from);
        const Length b = side(segment.to);
        if (a == b) return found;
        take(a / (a - b));
        return found;
    }
    // side(point at angle) = side(centre) + R cos(angle from the normal): two angles, each perhaps within the sweep.
    const Point centre = segment.centre();
    const double ratio = -(side(centre) / segment.radius());
    if (std::abs(ratio) > 1) return found;
    const double first = direction(centre, segment.from).angle().radians();
    const double base = normal.angle().radians();
    const double sweep = segment.turn.radians();
    for (const double sign : {1.0, -1.0}) {
        double delta = base + sign * std::acos(ratio) - first;
        delta = std::remainder(delta, 2 * Angle::pi);
        for (const double candidate : {delta - 2 * Angle::pi, delta, delta + 2 * Angle::pi}) take(candidate / sweep);
        if (std::abs(ratio) == 1) break;
    }
    std::sort(found.begin(), found.end());
    return found;
}

namespace {

/// The turn of one cubic that is off a circle of this radius by a thousandth of a millimetre; a quarter at most. With
/// handles of 4/3 tan(turn/4) radii it bulges by 2/27 sin^6(turn/4) / cos^2(turn/4) of them (the polynomial of its
/// distance from the centre, at its largest).
Angle most_turn(Length radius) {
    constexpr Length off = Length::mm(0.001);
    constexpr Angle quarter = Angle::degrees(90);
    const double least_cos = std::cos(quarter.radians() / 4);
    const double sixth = 27.0 / 2 * least_cos * least_cos * (off / radius);
    return std::min(quarter, Angle::radians(4 * std::asin(std::min(1.0, std::cbrt(std::sqrt(sixth))))));
}

}  // namespace

std::vector<std::array<Point, 3>> cubic_pieces(const Segment& segment) {
    if (segment.is_line()) {
        const Point step = (segment.to - segment.from) * (1.0 / 3);
        return {{segment.from + step, segment.to - step, segment.to}};
    }
    const double most = most_turn(segment.radius()).radians();
    const int count = std::max(1, static_cast<int>(std::ceil(std::abs(segment.turn.radians()) / most - 1e-9)));
    std::vector<std::array<Point, 3>> pieces;
    pieces.reserve(static_cast<std::size_t>(count));
    for (int i = 0; i < count; ++i) {
        const Segment part = segment.part(static_cast<double>(i) / count, static_cast<double>(i + 1) / count);
        // Handle of the usual cubic for a circular arc: 4/3 tan(turn/4) radii, i.e. of chord / (2 sin(turn/2)).
        const double quarter = part.turn.radians() / 4;
        const Length handle = part.chord() * (4.0 / 3 * std::tan(quarter) / (2 * std::sin(2 * quarter)));
        pieces.push_back(
            {part.from + part.start_direction() * handle, part.to - part.end_direction() * handle, part.to});
    }
    return pieces;
}

}  // namespace kerfpacket::geom
