#pragma once
// Points and directions in the plane: x to the right, y up, anticlockwise positive.

#include <algorithm>
#include <cmath>

#include "measure/length.h"

namespace kerfpacket::geom {

using measure::Angle;
using measure::Length;

/// A dimensionless direction or displacement factor.
struct Direction {
    double x = 1;
    double y = 0;

    static Direction at(Angle angle) { return {std::cos(angle.radians()), std::sin(angle.radians())}; }
    Angle angle() const { return Angle::radians(std::atan2(y, x)); }
    /// Turned a quarter turn to the left.
    Direction left() const { return {-y, x}; }
    Direction turned(Angle by) const {
        const double c = std::cos(by.radians());
        const double s = std::sin(by.radians());
        return {x * c - y * s, x * s + y * c};
    }
    Direction operator-() const { return {-x, -y}; }
};

/// A point, or the displacement between two points.
struct Point {
    Length x;
    Length y;

    friend Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
    friend Point operator-(Point a, Point b) { return {a.x - b.x, a.y - b.y}; }
    friend Point operator*(Point a, double factor) { return {a.x * factor, a.y * factor}; }
    bool operator==(const Point&) const = default;
};

inline Point operator*(Direction d, Length length) { return {length * d.x, length * d.y}; }
inline Length distance(Point a, Point b) { return measure::hypot(b.x - a.x, b.y - a.y); }
inline Point middle(Point a, Point b) { return (a + b) * 0.5; }
/// Unit direction from a to b; the points must differ.
inline Direction direction(Point a, Point b) {
    const Length d = distance(a, b);
    return {(b.x - a.x) / d, (b.y - a.y) / d};
}
/// Turned about the origin.
inline Point turned(Point p, Angle by) {
    const Direction d = Direction::at(by);
    return {p.x * d.x - p.y * d.y, p.x * d.y + p.y * d.x};
}

/// An axis-parallel rectangle; lower left and upper right corner.
struct Rect {
    Point low;
    Point high;

    Length width() const { return high.x - low.x; }
    Length height() const { return high.y - low.y; }
    bool contains(Point p) const { return low.x <= p.x && p.x <= high.x && low.y <= p.y && p.y <= high.y; }
    Rect grown(Length by) const { return {{low.x - by, low.y - by}, {high.x + by, high.y + by}}; }
    Rect moved(Point by) const { return {low + by, high + by}; }
    bool operator==(const Rect&) const = default;
};

/// Smallest rectangle that holds both.
inline Rect united(const Rect& a, const Rect& b) {
    return {{std::min(a.low.x, b.low.x), std::min(a.low.y, b.low.y)},
            {std::max(a.high.x, b.high.x), std::max(a.high.y, b.high.y)}};
}

}  // namespace kerfpacket::geom
