// Springs that stand at different heights.

#include <gtest/gtest.h>

#include <cmath>

#include "support/heads.h"

namespace kerfpacket::curve {
namespace {

using namespace measure::literals;
using tests::arch_of;
using tests::head_of;
using tests::on_legs;
using tests::opening_of;

class Unequal : public testing::TestWithParam<job::Shape> {};

job::Opening uneven(job::Shape shape) {
    const bool steep = shape == job::Shape::pointed || shape == job::Shape::horseshoe;
    const Length rise = shape == job::Shape::semicircular ? 30_in : steep ? 40_in : 20_in;
    return on_legs(opening_of(shape, 60_in, rise), 73_in, 70_in);
}

TEST_P(Unequal, springs_lie_on_either_side_of_the_origin) {
    const Head head = head_of(uneven(GetParam()));
    const std::vector<Curve> arch = arch_of(head);
    const Point left = arch.front().at({}).point;
    const Point right = arch.back().at(arch.back().length()).point;
    EXPECT_NEAR(left.x.inches(), -30, 1e-9);
    EXPECT_NEAR(left.y.inches(), 1.5, 1e-9) << "the longer leg carries the higher spring";
    EXPECT_NEAR(right.x.inches(), 30, 1e-9);
    EXPECT_NEAR(right.y.inches(), -1.5, 1e-9);
    // The feet stand on one floor.
    EXPECT_NEAR(head.left_leg().at({}).point.y.inches(), -71.5, 1e-9);
    EXPECT_NEAR(head.right_leg().at(head.right_leg().length()).point.y.inches(), -71.5, 1e-9);
}

TEST_P(Unequal, other_way_round_is_the_mirror_image) {
    const Head one = head_of(uneven(GetParam()));
    const Head other = head_of(on_legs(uneven(GetParam()), 70_in, 73_in));
    const Curve left = arch_of(one).front();
    const Curve right = arch_of(other).back().reversed();
    ASSERT_NEAR(left.length().mm(), right.length().mm(), 1e-8);
    for (int i = 0; i <= 20; ++i) {
        const Point p = left.at(left.length() * (i / 20.0)).point;
        const Point q = right.at(left.length() * (i / 20.0)).point;
        EXPECT_NEAR((p.x + q.x).mm(), 0, 1e-7);
        EXPECT_NEAR((p.y - q.y).mm(), 0, 1e-7);
    }
}

TEST_P(Unequal, runs_are_smooth_inside) {
    for (const Curve& run : arch_of(head_of(uneven(GetParam())))) {
        for (const Length joint : run.joints()) {
            const Direction before = run.at(joint - 1e-6_mm).direction;
            const Direction after = run.at(joint + 1e-6_mm).direction;
            EXPECT_NEAR(before.x * after.y - before.y * after.x, 0, 1e-7);
        }
    }
}

INSTANTIATE_TEST_SUITE_P(Shapes, Unequal,
                         testing::Values(job::Shape::segmental, job::Shape::semicircular, job::Shape::elliptical,
                                         job::Shape::three_centred, job::Shape::pointed, job::Shape::tudor,
                                         job::Shape::parabolic, job::Shape::catenary, job::Shape::horseshoe,
                                         job::Shape::eyebrow));

TEST(UnequalLegs, tilt_a_segmental_head_as_a_whole) {
    const Head head = head_of(uneven(job::Shape::segmental));
    const Curve arch = arch_of(head).front();
    const auto circle = arch.path().segments().front();
    EXPECT_NEAR(circle.radius().inches(), (3609 + 4 * 400) / 160.0, 1e-9);
    const Point middle = arch.at(arch.length() / 2).point;
    EXPECT_NEAR(measure::hypot(middle.x, middle.y).inches(), 20, 1e-9) << "square to the string at its middle";
}

TEST(UnequalLegs, halves_meet_level_at_the_crown) {
    for (const job::Shape shape : {job::Shape::elliptical, job::Shape::parabolic, job::Shape::three_centred}) {
        const Curve arch = arch_of(head_of(uneven(shape))).front();
        EXPECT_NEAR(arch.path().bounds().high.y.inches(), 20, 1e-9);
    }
}

TEST(UnequalLegs, make_a_half_circle_of_two_quarter_ellipses) {
    const Curve arch = arch_of(head_of(uneven(job::Shape::semicircular))).front();
    // Radius of curvature b^2/a at the spring.
    EXPECT_NEAR(1 / std::abs(arch.at({}).curvature), Length::inches(28.5 * 28.5 / 30).mm(), 1e-6);
    EXPECT_NEAR(1 / std::abs(arch.at(arch.length()).curvature), Length::inches(31.5 * 31.5 / 30).mm(), 1e-6);
}

}  // namespace
}  // namespace kerfpacket::curve
