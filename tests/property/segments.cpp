// Lines and arcs, one at a time.

#include <cmath>

#include <gtest/gtest.h>

#include "arbitrary.h"
#include "curve/shape.h"

namespace kerfpacket::geom {
namespace {

using tests::between;

/// Lengths here reach some metres; double leaves about 1e-12 of that.
const Length hair = Length::mm(1e-6);

/// The largest of centre and radius, which very flat arcs have far away, sets what rounding leaves.
Length rounding(const Segment& s) { return hair + 1e-11 * s.radius(); }

RC_GTEST_PROP(Segments, points_lie_on_their_circle, ()) {
    const Segment s = *tests::arc();
    const double f = *between(0, 1);
    RC_ASSERT(measure::abs(distance(s.centre(), s.point(f)) - s.radius()) <= rounding(s));
    RC_ASSERT(measure::abs(distance(s.centre(), s.to) - s.radius()) <= rounding(s));
}

// Inscribed chords are shorter than the arc by at most (step angle)^2 / 24.
RC_GTEST_PROP(Segments, length_is_that_of_many_chords, ()) {
    const Segment s = *tests::segment();
    constexpr int steps = 500;
    Length chords;
    for (int i = 0; i < steps; ++i) chords += distance(s.point(double(i) / steps), s.point(double(i + 1) / steps));
    const double angle = s.turn.radians() / steps;
    RC_ASSERT(chords <= s.length() + hair);
    RC_ASSERT(chords >= s.length() * (1 - angle * angle / 23) - hair);
}

RC_GTEST_PROP(Segments, parts_keep_length_and_place, ()) {
    const Segment s = *tests::segment();
    const double a = *between(0, 0.5);
    const double b = *between(0.6, 1);
    const Segment part = s.part(a, b);
    RC_ASSERT(measure::abs(part.length() - s.length() * (b - a)) <= hair);
    RC_ASSERT(tests::near(part.point(0.5), s.point((a + b) / 2), hair));
}

RC_GTEST_PROP(Segments, bounds_hold_every_point_and_touch_some, ()) {
    const Segment s = *tests::segment();
    const Rect box = s.bounds();
    Rect seen{s.from, s.from};
    for (int i = 0; i <= 400; ++i) {
        const Point p = s.point(i / 400.0);
        RC_ASSERT(box.grown(hair).contains(p));
        seen = united(seen, {p, p});
    }
    // Between samples the arc can bulge by its sagitta over one step.
    const Length step = s.length() / 400;
    const Length bulge = s.is_line() ? hair : hair + step * (step / (2 * s.radius()));
    RC_ASSERT(seen.grown(bulge).contains(box.low) && seen.grown(bulge).contains(box.high));
}

RC_GTEST_PROP(Segments, cubics_stay_on_the_circle, ()) {
    const Segment s = *tests::arc();
    Point from = s.from;
    for (const auto& [c1, c2, end] : cubic_pieces(s)) {
        for (int step = 1; step < 20; ++step) {
            const double t = step / 20.0;
            const double u = 1 - t;
            const Point p = from * (u * u * u) + c1 * (3 * u * u * t) + c2 * (3 * u * t * t) + end * (t * t * t);
            RC_ASSERT(measure::abs(distance(s.centre(), p) - s.radius()) <= Length::mm(0.001) + rounding(s));
        }
        from = end;
    }
    RC_ASSERT(from == s.to);
}

RC_GTEST_PROP(Segments, crossings_lie_on_both, ()) {
    const Segment s = *tests::segment();
    const Point on_line = s.point(*between(-1, 2)) + *tests::point(500);
    const Direction along = Direction::at(Angle::degrees(*between(-180, 180)));
    const auto side = [&](Point p) {
        return ((p.x - on_line.x) * along.left().x + (p.y - on_line.y) * along.left().y).mm();
    };
    const std::vector<double> found = crossings(s, on_line, along);
    const Length slack = s.is_line() ? hair : rounding(s);
    for (const double f : found) RC_ASSERT(std::abs(side(s.point(f))) <= 100 * slack.mm());
    // None is missed: between two samples on different sides stands a crossing.
    for (int i = 0; i < 200; ++i) {
        const double a = i / 200.0, b = (i + 1) / 200.0;
        if (side(s.point(a)) * side(s.point(b)) >= 0) continue;
        RC_ASSERT(std::any_of(found.begin(), found.end(), [&](double f) { return a - 1e-9 <= f && f <= b + 1e-9; }));
    }
}

RC_GTEST_PROP(Chords, radius_and_turn_give_chord_and_rise_back, ()) {
    const Length chord = Length::mm(*between(10, 9000));
    const Length rise = chord * *between(0.001, 1.5);
    const Length radius = curve::radius_from_chord(chord, rise);
    const double half = curve::turn_from_chord(chord, rise).radians() / 2;
    RC_ASSERT(measure::abs(2 * radius * std::sin(half) - chord) <= hair);
    RC_ASSERT(measure::abs(radius * (1 - std::cos(half)) - rise) <= hair);
}

}  // namespace
}  // namespace kerfpacket::geom
