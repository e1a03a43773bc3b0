#include "curve/curve.h"

#include <gtest/gtest.h>

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

TEST(Walls, concave_bulges_up_and_convex_down) {
    const double rise = 10 * (1 - std::sqrt(0.5));
    const Curve concave = measured_curve(quarter(job::Side::concave));
    EXPECT_NEAR(concave.path.bounds().high.y.inches(), rise, 1e-12);
    EXPECT_NEAR(concave.path.bounds().low.y.inches(), 0, 1e-12);
    const Curve convex = measured_curve(quarter(job::Side::convex));
    EXPECT_NEAR(convex.path.bounds().low.y.inches(), -rise, 1e-12);
    EXPECT_NEAR(concave.path.start().x.inches(), -10 * std::sqrt(0.5), 1e-12);
    EXPECT_LT(concave.path.turn(), Angle());
    EXPECT_GT(convex.path.turn(), Angle());
}

TEST(Walls, chord_and_rise_give_the_curve_of_radius_and_angle) {
    job::Wall measured;
    measured.side.value = job::Side::convex;
    measured.chord = {20_in * std::sqrt(0.5), {}};
    measured.rise = {10_in * (1 - std::sqrt(0.5)), {}};
    const Curve curve = measured_curve(measured);
    EXPECT_NEAR(curve.radius.inches(), 10, 1e-12);
    EXPECT_NEAR(curve.turn.degrees(), 90, 1e-10);
    EXPECT_NEAR(curve.path.length().inches(), 5 * Angle::pi, 1e-11);
}

TEST(Walls, more_than_a_half_turn) {
    job::Wall wall = quarter(job::Side::convex);
    wall.angle->value = Angle::degrees(270);
    const Curve curve = measured_curve(wall);
    EXPECT_NEAR(curve.path.length().inches(), 15 * Angle::pi, 1e-9);
    EXPECT_NEAR(curve.path.bounds().width().inches(), 20, 1e-9);
}

TEST(Arches, stand_on_the_spring_line) {
    job::Opening opening;
    opening.span.value = 60_in;
    opening.rise.value = 10_in;
    const Curve curve = measured_curve(opening);
    EXPECT_EQ(curve.path.start(), (geom::Point{-30_in, {}}));
    EXPECT_EQ(curve.path.end(), (geom::Point{30_in, {}}));
    EXPECT_NEAR(curve.path.bounds().high.y.inches(), 10, 1e-12);
    EXPECT_GT(curve.path.at({}).direction.y, 0);
}

}  // namespace
}  // namespace kerfpacket::curve
