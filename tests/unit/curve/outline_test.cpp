// Runs that meet at corners, and their parallels.

#include "curve/outline.h"

#include <gtest/gtest.h>

namespace kerfpacket::curve {
namespace {

using namespace measure::literals;

Curve line(Point from, Point to) { return Curve::of(Path::line(from, to)); }

/// A lancet of radius 46 over a span of 38.5 with legs of 20.
Outline lancet() {
    const double half = 19.25;
    const double radius = 46;
    const double rise = std::sqrt(radius * radius - (radius - half) * (radius - half));
    const double turn = std::acos((radius - half) / radius);
    const Point left{Length::mm(-half), {}};
    const Point right{Length::mm(half), {}};
    const Point top{{}, Length::mm(rise)};
    return Outline({line({left.x, -20_mm}, left), Curve::of(Path::arc(left, top, Angle::radians(-turn))),
                    Curve::of(Path::arc(top, right, Angle::radians(-turn))), line(right, {right.x, -20_mm})});
}

TEST(Outline, square_corner_of_lines) {
    const Outline outline({line({0_mm, 0_mm}, {10_mm, 0_mm}), line({10_mm, 0_mm}, {10_mm, 10_mm})});
    EXPECT_NEAR(outline.corner(0).degrees(), 90, 1e-12);
    EXPECT_TRUE(outline.has_corner(0));
    const auto inner = outline.parallel(3_mm);
    EXPECT_NEAR(inner[0].end().x.mm(), 7, 1e-9);
    EXPECT_NEAR(inner[0].end().y.mm(), 3, 1e-9);
    const auto outer = outline.parallel(-3_mm);
    EXPECT_NEAR(outer[0].end().x.mm(), 13, 1e-9);
    EXPECT_NEAR(outer[1].start().y.mm(), -3, 1e-9);
    EXPECT_EQ(outer[1].start(), outer[0].end());
}

TEST(Outline, lancet_meets_above_and_below_its_point_on_the_centre_line) {
    const Outline outline = lancet();
    EXPECT_FALSE(outline.has_corner(0));
    EXPECT_TRUE(outline.has_corner(1));
    for (const double left : {5.0, -5.0}) {
        const auto parallel = outline.parallel(Length::mm(left));
        // Both sides are circles of radius 46 + left about the centres of the measured ones.
        const double rise = std::sqrt(std::pow(46 + left, 2) - std::pow(46 - 19.25, 2));
        EXPECT_NEAR(parallel[1].end().x.mm(), 0, 1e-9);
        EXPECT_NEAR(parallel[1].end().y.mm(), rise, 1e-9);
        EXPECT_NEAR(parallel[1].start().x.mm(), -19.25 - left, 1e-9);
        EXPECT_NEAR(parallel[1].segments().front().radius().mm(), 46 + left, 1e-9);
    }
}

TEST(Outline, sharp_radius_is_a_fold_with_its_place) {
    const Outline outline({Curve::of(Path::arc({-4_mm, 0_mm}, {4_mm, 0_mm}, Angle::degrees(-180)))});
    EXPECT_TRUE(outline.extents(-3.9_mm).has_value());
    const auto folded = outline.extents(-4.1_mm);
    ASSERT_FALSE(folded.has_value());
    EXPECT_NEAR(folded.error().radius.mm(), 4, 1e-9);
    EXPECT_NEAR(folded.error().distance.mm(), 4.1, 1e-12);
    EXPECT_NEAR(geom::distance(folded.error().where, {}).mm(), 4, 1e-9);
    EXPECT_TRUE(outline.extents(4.1_mm).has_value());
}

TEST(Outline, run_that_is_used_up_is_a_fold) {
    const Outline outline(
        {line({0_mm, 0_mm}, {10_mm, 0_mm}), line({10_mm, 0_mm}, {10_mm, 6_mm}), line({10_mm, 6_mm}, {0_mm, 6_mm})});
    EXPECT_TRUE(outline.extents(2.9_mm).has_value());
    ASSERT_FALSE(outline.extents(3.1_mm).has_value());
    EXPECT_EQ(outline.extents(3.1_mm).error().radius, 0_mm);
}

TEST(Outline, extents_say_how_far_each_run_reaches) {
    const Outline outline = lancet();
    const auto inside = outline.extents(-2_mm);
    ASSERT_TRUE(inside.has_value());
    EXPECT_EQ((*inside)[1].from, 0_mm);
    EXPECT_LT((*inside)[1].to, outline.runs()[1].length());
    const auto outside = outline.extents(2_mm);
    EXPECT_GT((*outside)[1].to, outline.runs()[1].length());
}

}  // namespace
}  // namespace kerfpacket::curve
