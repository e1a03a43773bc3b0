#include <gtest/gtest.h>

#include "geom/enters.h"
#include "geom/path.h"
#include "measure/require.h"

namespace kerfpacket::geom {
namespace {

using namespace measure::literals;

Point at(double x, double y) { return {Length::mm(x), Length::mm(y)}; }

/// Two straight legs of 20 joined by a half circle of radius 10: an arch with its springs at y = 0.
Path arch() {
    return Path(
        {{at(-10, -20), at(-10, 0), {}}, {at(-10, 0), at(10, 0), Angle::degrees(-180)}, {at(10, 0), at(10, -20), {}}});
}

TEST(Paths, measure_along_themselves) {
    EXPECT_NEAR(arch().length().mm(), 40 + 10 * Angle::pi, 1e-9);
    EXPECT_NEAR(arch().turn().degrees(), -180, 1e-9);
    const Station crown = arch().at(arch().length() / 2);
    EXPECT_NEAR(crown.point.y.mm(), 10, 1e-9);
    EXPECT_NEAR(crown.direction.x, 1, 1e-9);
    EXPECT_EQ(arch().at(-5_mm).point, arch().start());
    EXPECT_EQ(arch().at(999_mm).point, arch().end());
    EXPECT_EQ(arch().curvature_at(5_mm), 0);
    EXPECT_NEAR(arch().curvature_at(arch().length() / 2), -0.1, 1e-12);
}

TEST(Paths, run_parallel_inside_and_outside) {
    const Path inside = arch().offset_left(-3_mm);
    EXPECT_NEAR(inside.segments()[1].radius().mm(), 7, 1e-9);
    EXPECT_EQ(inside.start(), at(-7, -20));
    EXPECT_NEAR(arch().offset_left(3_mm).bounds().high.y.mm(), 13, 1e-9);
    EXPECT_THROW(arch().offset_left(-11_mm), measure::Bug) << "a parallel beyond the centre folds on itself";
}

TEST(Paths, mirrored_turn_the_other_way) {
    // A quarter of a circle about the origin, anticlockwise from the right.
    const Path quarter = Path::arc(at(10, 0), at(0, 10), Angle::degrees(90));
    const Path left = quarter.mirrored_left_right();
    EXPECT_EQ(left, Path::arc(at(-10, 0), at(0, 10), Angle::degrees(-90)));
    EXPECT_NEAR(left.segments()[0].centre().x.mm(), 0, 1e-12);
    EXPECT_NEAR(left.segments()[0].centre().y.mm(), 0, 1e-12);
    const Path below = quarter.mirrored_up_down();
    EXPECT_EQ(below, Path::arc(at(10, 0), at(0, -10), Angle::degrees(-90)));
    // About both axes is half a turn, and twice is not at all.
    EXPECT_EQ(left.mirrored_up_down().segments()[0].turn, quarter.segments()[0].turn);
    EXPECT_NEAR(distance(left.mirrored_up_down().end(), quarter.turned(Angle::degrees(180)).end()).mm(), 0, 1e-12);
    EXPECT_EQ(left.mirrored_left_right(), quarter);
    EXPECT_TRUE(Path::rectangle({at(1, 2), at(3, 4)}).mirrored_left_right().closed());
}

// A circle of 13 about the origin stands 12 over x = 5, by 5-12-13; the upright at 14 misses it.
TEST(Paths, stand_over_an_upright) {
    const Path circle = Path::circle({}, 13_mm);
    ASSERT_TRUE(height_over(circle, 5_mm));
    EXPECT_NEAR(height_over(circle, 5_mm)->mm(), 12, 1e-9);
    EXPECT_FALSE(height_over(circle, 14_mm));
}

TEST(Paths, closed_shapes) {
    EXPECT_NEAR(Path::circle(at(3, 4), 10_mm).length().mm(), 20 * Angle::pi, 1e-9);
    EXPECT_NEAR(Path::circle(at(3, 4), 10_mm).bounds().low.y.mm(), -6, 1e-9);
    const Path box = Path::rectangle({at(0, 0), at(30, 40)});
    EXPECT_TRUE(box.closed());
    EXPECT_EQ(box.segments().size(), 4U);
    EXPECT_NEAR(box.length().mm(), 140, 1e-9);
}

struct Window {
    const char* name;
    double low_x, low_y, high_x, high_y;
    std::vector<double> lengths;  ///< of the pieces, in order of travel
};

class Clipping : public testing::TestWithParam<Window> {};

TEST_P(Clipping, keeps_what_lies_inside) {
    const Window w = GetParam();
    const Rect window{at(w.low_x, w.low_y), at(w.high_x, w.high_y)};
    const auto pieces = clip(arch(), window);
    EXPECT_EQ(enters(arch(), window), !pieces.empty());
    ASSERT_EQ(pieces.size(), w.lengths.size());
    for (std::size_t i = 0; i < pieces.size(); ++i) EXPECT_NEAR(pieces[i].length().mm(), w.lengths[i], 1e-6);
}

// Heights on the half circle: at y = 5 a third of a quarter circle (30 of 90 degrees) is below.
constexpr double twelfth = Angle::pi * 10 / 6;

INSTANTIATE_TEST_SUITE_P(Windows, Clipping,
                         testing::Values(Window{"everything", -11, -21, 11, 11, {40 + 10 * Angle::pi}},
                                         Window{"nothing", 20, 20, 30, 30, {}},
                                         Window{"hollow_middle", -5, -15, 5, 5, {}},
                                         Window{"legs_only", -11, -15, 11, -5, {10, 10}},
                                         Window{"below_five", -11, -21, 11, 5, {20 + twelfth, 20 + twelfth}},
                                         Window{"crown", -11, 5, 11, 11, {4 * twelfth}},
                                         Window{"left_half", -11, -21, 0, 11, {20 + 5 * Angle::pi}},
                                         Window{"edge_along_a_leg", -20, -20, -10, 0, {20}}),
                         [](const auto& tested) { return tested.param.name; });

}  // namespace
}  // namespace kerfpacket::geom
