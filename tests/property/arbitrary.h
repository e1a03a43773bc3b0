#pragma once
// Random lengths, angles and segments of the size that boards and walls have.

#include <rapidcheck/gtest.h>

#include "geom/path.h"

namespace kerfpacket::tests {

/// A number from low to high, a thousandth of the range apart at the closest.
inline rc::Gen<double> between(double low, double high) {
    return rc::gen::map(rc::gen::inRange(0, 1001), [=](int n) { return low + (high - low) * n / 1000; });
}

inline rc::Gen<geom::Point> point(double reach) {
    return rc::gen::map(rc::gen::pair(between(-reach, reach), between(-reach, reach)), [](const auto& p) {
        return geom::Point{geom::Length::mm(p.first), geom::Length::mm(p.second)};
    });
}

inline geom::Segment segment_from(geom::Point from, double heading, double chord, double turn) {
    const auto along = geom::Direction::at(geom::Angle::degrees(heading));
    return {from, from + along * geom::Length::mm(chord), geom::Angle::degrees(turn)};
}

/// Arcs either way, up to nearly a full turn, some very flat.
inline rc::Gen<geom::Segment> arc() {
    const auto turn = rc::gen::oneOf(between(1, 350), between(-350, -1), between(1e-4, 0.01));
    return rc::gen::map(rc::gen::tuple(point(3000), between(-180, 180), between(1, 4000), turn), [](const auto& t) {
        return segment_from(std::get<0>(t), std::get<1>(t), std::get<2>(t), std::get<3>(t));
    });
}

/// Arcs and straight lines.
inline rc::Gen<geom::Segment> segment() {
    const auto line =
        rc::gen::map(rc::gen::tuple(point(3000), between(-180, 180), between(1, 4000)),
                     [](const auto& t) { return segment_from(std::get<0>(t), std::get<1>(t), std::get<2>(t), 0); });
    return rc::gen::weightedOneOf<geom::Segment>({{4, arc()}, {1, line}});
}

/// A run of segments, each going on in the direction in which the one before ends.
inline rc::Gen<geom::Path> smooth_path() {
    return rc::gen::map(
        rc::gen::resize(5, rc::gen::nonEmpty(rc::gen::container<std::vector<geom::Segment>>(segment()))),
        [](std::vector<geom::Segment> segments) {
            for (std::size_t i = 1; i < segments.size(); ++i) {
                const geom::Segment& before = segments[i - 1];
                const auto along = before.end_direction().turned(segments[i].turn / 2);
                const geom::Length chord = segments[i].chord();
                segments[i] = {before.to, before.to + along * chord, segments[i].turn};
            }
            return geom::Path(segments);
        });
}

inline bool near(geom::Point a, geom::Point b, geom::Length within) { return geom::distance(a, b) <= within; }

}  // namespace kerfpacket::tests

// How rapidcheck prints a counterexample; it looks for functions of this name.
// NOLINTBEGIN(readability-identifier-naming)
namespace kerfpacket::geom {
inline void showValue(const Segment& s, std::ostream& os) {
    os << "from (" << s.from.x.mm() << ", " << s.from.y.mm() << ") to (" << s.to.x.mm() << ", " << s.to.y.mm()
       << ") turn " << s.turn.degrees();
}
inline void showValue(const Path& path, std::ostream& os) {
    for (const Segment& s : path.segments()) {
        showValue(s, os);
        os << "; ";
    }
}
inline void showValue(const Point& p, std::ostream& os) { os << "(" << p.x.mm() << ", " << p.y.mm() << ")"; }
}  // namespace kerfpacket::geom
// NOLINTEND(readability-identifier-naming)
