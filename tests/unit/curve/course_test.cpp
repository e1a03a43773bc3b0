// Walls in plan.

#include <gtest/gtest.h>

#include <cmath>

#include "curve/shape.h"

namespace kerfpacket::curve {
namespace {

using namespace measure::literals;

job::Wall quarter(job::Side side) {
    job::Wall wall;
    wall.radius = {10_in, {}};
    wall.angle = {Angle::degrees(90), {}};
    wall.side.value = side;
    return wall;
}

Course course_of(const job::Wall& wall) { return course(wall, measure::Unit::inch).value(); }

TEST(Walls, concave_bulges_up_and_convex_down) {
    const double rise = 10 * (1 - std::sqrt(0.5));
    const Course concave = course_of(quarter(job::Side::concave));
    const geom::Rect up = concave.curve.path().bounds();
    EXPECT_NEAR(concave.rise.inches(), rise, 1e-12);
    EXPECT_NEAR(up.high.y.inches(), rise, 1e-12);
    EXPECT_NEAR(up.low.y.inches(), 0, 1e-12);
    EXPECT_NEAR(concave.curve.at({}).point.x.inches(), -10 * std::sqrt(0.5), 1e-12);
    const Course convex = course_of(quarter(job::Side::convex));
    EXPECT_NEAR(convex.curve.path().bounds().low.y.inches(), -rise, 1e-12);
    EXPECT_NEAR(convex.rise.inches(), rise, 1e-12);
    EXPECT_LT(concave.curve.turn(), Angle());
    EXPECT_GT(convex.curve.turn(), Angle());
}

TEST(Walls, chord_and_rise_give_the_curve_of_radius_and_angle) {
    job::Wall measured;
    measured.side.value = job::Side::convex;
    measured.chord = {20_in * std::sqrt(0.5), {}};
    measured.rise = {10_in * (1 - std::sqrt(0.5)), {}};
    const Course there = course_of(measured);
    EXPECT_NEAR(there.chord.inches(), 20 * std::sqrt(0.5), 1e-12);
    EXPECT_NEAR(there.curve.turn().degrees(), 90, 1e-10);
    EXPECT_NEAR(there.curve.length().inches(), 5 * Angle::pi, 1e-11);
}

TEST(Walls, more_than_a_half_turn) {
    job::Wall wall = quarter(job::Side::convex);
    wall.angle->value = Angle::degrees(270);
    const Course there = course_of(wall);
    EXPECT_NEAR(there.curve.length().inches(), 15 * Angle::pi, 1e-9);
    EXPECT_NEAR(there.curve.path().bounds().width().inches(), 20, 1e-9);
    EXPECT_NEAR(there.rise.inches(), 10 + 10 * std::sqrt(0.5), 1e-9);
}

TEST(Walls, rise_over_half_the_chord_is_refused_with_both_figures) {
    job::Wall wall;
    wall.chord = {120_in, {14, 9}};
    wall.rise = {61_in, {15, 8}};
    const auto wrong = course(wall, measure::Unit::inch);
    ASSERT_FALSE(wrong);
    ASSERT_EQ(wrong.error().size(), 1U);
    EXPECT_EQ(wrong.error()[0].at, (job::Position{15, 8}));
    EXPECT_EQ(wrong.error()[0].message, "rise 61 in is more than half the chord, 60 in");
    wall.rise->value = 60_in;
    EXPECT_TRUE(course(wall, measure::Unit::inch));
}

}  // namespace
}  // namespace kerfpacket::curve
