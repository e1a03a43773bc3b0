// What every head has in common, and what each shape has of its own.

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
using tests::opening_without_rise;

/// At a hair's breadth: figures here are some feet, held to 1e-9 mm.
constexpr double hair = 1e-9;

Spot first_spot(const Head& head) { return arch_of(head).front().at({}); }
Spot last_spot(const Head& head) {
    const Curve last = arch_of(head).back();
    return last.at(last.length());
}
Angle heading(const Spot& spot) { return spot.direction.angle(); }

job::Opening with_radius(Length span, Length radius) {
    job::Opening opening = opening_without_rise(job::Shape::pointed, span);
    opening.radius = tests::at_line(radius, tests::radius_line);
    return opening;
}

struct Case {
    const char* name;
    job::Opening opening;
    double rise;     ///< of the crown, in inches
    double heading;  ///< at the left spring, in degrees; at the right one it is mirrored on level springs
    bool pointed;
};

class Heads : public testing::TestWithParam<Case> {};

TEST_P(Heads, stand_on_their_springs) {
    const Head head = head_of(GetParam().opening);
    const Length half = GetParam().opening.span.value / 2;
    EXPECT_NEAR((first_spot(head).point.x + half).mm(), 0, hair);
    EXPECT_NEAR((last_spot(head).point.x - half).mm(), 0, hair);
    EXPECT_NEAR(first_spot(head).point.y.mm(), 0, hair);
    EXPECT_NEAR(last_spot(head).point.y.mm(), 0, hair);
    EXPECT_EQ(head.span, GetParam().opening.span.value);
}

TEST_P(Heads, reach_their_crown_in_the_middle) {
    const Head head = head_of(GetParam().opening);
    EXPECT_NEAR(head.rise.inches(), GetParam().rise, hair);
    const std::vector<Curve> arch = arch_of(head);
    ASSERT_EQ(arch.size(), GetParam().pointed ? 2U : 1U);
    const Spot crown = arch.front().at(GetParam().pointed ? arch.front().length() : arch.front().length() / 2);
    EXPECT_NEAR(crown.point.x.mm(), 0, hair);
    EXPECT_NEAR(crown.point.y.inches(), GetParam().rise, hair);
    if (GetParam().pointed) {
        EXPECT_GT(crown.direction.y, 0.01) << "the left side still rises where it meets the right one";
    } else {
        EXPECT_NEAR(crown.direction.y, 0, 1e-12);
    }
}

TEST_P(Heads, leave_the_spring_as_their_shape_does) {
    const Head head = head_of(GetParam().opening);
    EXPECT_NEAR(heading(first_spot(head)).degrees(), GetParam().heading, 1e-9);
    EXPECT_NEAR(heading(last_spot(head)).degrees(), -GetParam().heading, 1e-9);
}

TEST_P(Heads, are_smooth_where_stretches_join) {
    for (const Curve& run : arch_of(head_of(GetParam().opening))) {
        const auto segments = run.path().segments();
        for (std::size_t i = 1; i < segments.size(); ++i) {
            const Direction before = segments[i - 1].end_direction();
            const Direction after = segments[i].start_direction();
            EXPECT_LE(geom::distance(segments[i - 1].to, segments[i].from).mm(), hair);
            EXPECT_NEAR(before.x * after.y - before.y * after.x, 0, run.is_exact_path() ? 1e-12 : 1e-6);
        }
    }
}

TEST_P(Heads, are_their_own_mirror_image) {
    const Head head = head_of(GetParam().opening);
    const std::vector<Curve> arch = arch_of(head);
    const Curve& left = arch.front();
    const Curve right = arch.back().reversed();
    EXPECT_NEAR(left.length().mm(), right.length().mm(), hair * left.length().mm());
    for (int i = 0; i <= 40; ++i) {
        const Point p = left.at(left.length() * (i / 40.0)).point;
        const Point q = right.at(right.length() * (i / 40.0)).point;
        EXPECT_NEAR((p.x + q.x).mm(), 0, 1e-8);
        EXPECT_NEAR((p.y - q.y).mm(), 0, 1e-8);
    }
}

TEST_P(Heads, stand_on_legs_that_run_upright) {
    const Head head = head_of(on_legs(GetParam().opening, 61.25_in, 61.25_in));
    EXPECT_NEAR(head.left_leg().length().inches(), 61.25, 1e-12);
    EXPECT_NEAR(head.left_leg().at({}).point.y.inches(), -61.25, 1e-12);
    EXPECT_NEAR(heading(head.left_leg().at({})).degrees(), 90, 1e-12);
    EXPECT_NEAR(heading(head.right_leg().at({})).degrees(), -90, 1e-12);
    EXPECT_EQ(head.left_leg().at(head.left_leg().length()).point, first_spot(head).point);
    EXPECT_EQ(head.right_leg().at({}).point, last_spot(head).point);
    // A job that does not say still has an inch to draw.
    EXPECT_NEAR(head_of(GetParam().opening).right_leg().length().inches(), 1, 1e-12);
}

/// Of a circle through springs and crown the spring stands at half the turn.
double spring_lean(double span, double rise) { return 2 * std::atan(2 * rise / span) * 180 / Angle::pi; }

INSTANTIATE_TEST_SUITE_P(
    Shapes, Heads,
    testing::Values(
        Case{"segmental", opening_of(job::Shape::segmental, 70_in, 13.5_in), 13.5, spring_lean(70, 13.5), false},
        Case{"semicircular", opening_without_rise(job::Shape::semicircular, 36_in), 18, 90, false},
        Case{"elliptical", opening_of(job::Shape::elliptical, 84_in, 21_in), 21, 90, false},
        Case{"tall_ellipse", opening_of(job::Shape::elliptical, 40_in, 30_in), 30, 90, false},
        Case{"three_centred", opening_of(job::Shape::three_centred, 80_in, 25_in), 25, 90, false},
        Case{"equilateral", with_radius(40_in, 40_in), 20 * std::sqrt(3.0), 90, true},
        Case{"lancet", opening_of(job::Shape::pointed, 30_in, 41_in), 41, 90, true},
        Case{"drop", with_radius(40_in, 31_in), std::sqrt(31 * 31 - 11 * 11.0), 90, true},
        Case{"tudor", opening_of(job::Shape::tudor, 66_in, 22_in), 22, 90, true},
        Case{"high_tudor", opening_of(job::Shape::tudor, 40_in, 33_in), 33, 90, true},
        Case{"parabolic", opening_of(job::Shape::parabolic, 60_in, 20_in), 20,
             std::atan(4 * 20.0 / 60) * 180 / Angle::pi, false},
        // Span over parameter a for rise/span = 1/4: a = 51.5674 at 96 by 24, check-values.
        Case{"catenary", opening_of(job::Shape::catenary, 2 * 51.5674_in, 51.5674_in * (std::cosh(1.0) - 1)),
             51.5674 * (std::cosh(1.0) - 1), std::atan(std::sinh(1.0)) * 180 / Angle::pi, false},
        Case{"horseshoe", opening_of(job::Shape::horseshoe, 40_in, 30_in), 30, spring_lean(40, 30), false},
        Case{"eyebrow", opening_of(job::Shape::eyebrow, 72_in, 9_in), 9, 0, false}),
    [](const auto& shape) { return shape.param.name; });

TEST(Tudor, makes_a_point_at_every_rise) {
    for (double rise = 0.5; rise < 200; rise *= 1.3) {
        const Head head = head_of(opening_of(job::Shape::tudor, 60_in, Length::inches(rise)));
        const Curve left = arch_of(head).front();
        const Spot top = left.at(left.length());
        EXPECT_NEAR(top.point.x.mm(), 0, 1e-7) << rise;
        EXPECT_NEAR(top.point.y.inches(), rise, 1e-8) << rise;
        EXPECT_GT(heading(top).degrees(), 0.1) << rise;
        EXPECT_LT(left.turn(), Angle()) << rise;
        const geom::Path path = left.path();
        for (const geom::Segment& s : path.segments()) EXPECT_LT(s.turn, Angle()) << rise;
    }
}

TEST(Tudor, takes_the_radii_that_are_given) {
    job::Opening opening = opening_of(job::Shape::tudor, 66_in, 22_in);
    opening.side_radius = tests::at_line(9_in, tests::radius_line);
    opening.crown_radius = tests::at_line(80_in, tests::second_radius_line);
    const auto segments = arch_of(head_of(opening)).front().path().segments();
    ASSERT_EQ(segments.size(), 2U);
    EXPECT_NEAR(segments[0].radius().inches(), 9, 1e-9);
    EXPECT_NEAR(segments[1].radius().inches(), 80, 1e-8);
    EXPECT_NEAR(segments[0].centre().y.mm(), 0, 1e-9);
}

TEST(ThreeCentred, takes_the_side_radius_that_is_given) {
    job::Opening opening = opening_of(job::Shape::three_centred, 80_in, 25_in);
    opening.side_radius = tests::at_line(12_in, tests::radius_line);
    const auto segments = arch_of(head_of(opening)).front().path().segments();
    ASSERT_EQ(segments.size(), 3U);
    EXPECT_NEAR(segments[0].radius().inches(), 12, 1e-10);
    EXPECT_NEAR(segments[2].radius().inches(), 12, 1e-10);
    EXPECT_NEAR(segments[1].centre().x.mm(), 0, 1e-9);
}

TEST(Eyebrow, bends_one_way_and_then_the_other) {
    job::Opening opening = opening_of(job::Shape::eyebrow, 72_in, 9_in);
    opening.reverse_radius = tests::at_line(20_in, tests::radius_line);
    const Curve arch = arch_of(head_of(opening)).front();
    EXPECT_NEAR(1 / arch.at({}).curvature, Length::inches(20).mm(), 1e-9);
    EXPECT_LT(arch.at(arch.length() / 2).curvature, 0);
    EXPECT_EQ(arch.inflections().size(), 2U);
    EXPECT_NEAR(arch.turn().radians(), 0, 1e-12);
}

TEST(Horseshoe, is_wider_than_its_span_and_others_are_not) {
    EXPECT_NEAR(widest(head_of(opening_of(job::Shape::horseshoe, 40_in, 30_in))).inches(), 2 * (1600 + 3600) / 240.0,
                1e-9);
    EXPECT_NEAR(widest(head_of(opening_of(job::Shape::pointed, 40_in, 50_in))).inches(), 40, 1e-9);
    EXPECT_NEAR(widest(head_of(opening_of(job::Shape::elliptical, 40_in, 10_in))).inches(), 40, 1e-6);
}

}  // namespace
}  // namespace kerfpacket::curve
