#include <gtest/gtest.h>

#include "geom/path.h"

namespace kerfpacket::geom {
namespace {

using namespace measure::literals;

/// Figures that can be seen by eye: lines, quarter and half circles. Millimetres and degrees.
struct Case {
    const char* name;
    double from_x, from_y, to_x, to_y, turn;
    double length, radius, centre_x, centre_y;
    double start_heading, end_heading;
    double middle_x, middle_y;
    double low_x, low_y, high_x, high_y;
};

constexpr double pi = Angle::pi;
const double diagonal = std::sqrt(50.0);

const std::vector<Case> cases{
    {"line", 0, 0, 30, 40, 0, 50, 0, 0, 0, 53.130102, 53.130102, 15, 20, 0, 0, 30, 40},
    {"quarter_left", 10, 0, 0, 10, 90, 5 * pi, 10, 0, 0, 90, 180, diagonal, diagonal, 0, 0, 10, 10},
    {"quarter_right", 0, 10, 10, 0, -90, 5 * pi, 10, 0, 0, 0, -90, diagonal, diagonal, 0, 0, 10, 10},
    {"half_over", -10, 0, 10, 0, -180, 10 * pi, 10, 0, 0, 90, -90, 0, 10, -10, 0, 10, 10},
    {"half_under", -10, 0, 10, 0, 180, 10 * pi, 10, 0, 0, -90, 90, 0, -10, -10, -10, 10, 0},
    {"three_quarters", 10, 0, 0, -10, 270, 15 * pi, 10, 0, 0, 90, 0, -diagonal, diagonal, -10, -10, 10, 10},
};

Point at(double x, double y) { return {Length::mm(x), Length::mm(y)}; }

void expect_point(Point found, double x, double y) {
    EXPECT_NEAR(found.x.mm(), x, 1e-9);
    EXPECT_NEAR(found.y.mm(), y, 1e-9);
}

double degrees_apart(Direction found, double heading) {
    return std::abs(std::remainder(found.angle().degrees() - heading, 360));
}

class Segments : public testing::TestWithParam<Case> {
protected:
    Case expected = GetParam();
    Segment segment{at(expected.from_x, expected.from_y), at(expected.to_x, expected.to_y),
                    Angle::degrees(expected.turn)};
};

TEST_P(Segments, measure_themselves) {
    EXPECT_NEAR(segment.length().mm(), expected.length, 1e-9);
    EXPECT_LT(degrees_apart(segment.start_direction(), expected.start_heading), 1e-6);
    EXPECT_LT(degrees_apart(segment.end_direction(), expected.end_heading), 1e-6);
    EXPECT_LT(degrees_apart(segment.direction_at(1), expected.end_heading), 1e-6);
    expect_point(segment.point(0.5), expected.middle_x, expected.middle_y);
    if (!segment.is_line()) {
        EXPECT_NEAR(segment.radius().mm(), expected.radius, 1e-9);
        expect_point(segment.centre(), expected.centre_x, expected.centre_y);
    }
}

TEST_P(Segments, know_their_bounds) {
    expect_point(segment.bounds().low, expected.low_x, expected.low_y);
    expect_point(segment.bounds().high, expected.high_x, expected.high_y);
}

TEST_P(Segments, are_drawn_by_cubics_within_a_thousandth_of_a_millimetre) {
    const auto pieces = cubic_pieces(segment);
    EXPECT_EQ(pieces.back()[2], segment.to);
    if (segment.is_line()) return;
    Length worst;
    Point from = segment.from;
    for (const auto& [c1, c2, end] : pieces) {
        for (int step = 1; step < 50; ++step) {
            const double t = step / 50.0, u = 1 - t;
            const Point p = from * (u * u * u) + c1 * (3 * u * u * t) + c2 * (3 * u * t * t) + end * (t * t * t);
            worst = std::max(worst, measure::abs(distance(segment.centre(), p) - segment.radius()));
        }
        from = end;
    }
    EXPECT_LE(worst, Length::mm(0.001));
}

TEST(Cubics, are_no_more_than_it_takes) {
    const auto of_circle = [](Length radius) {
        return cubic_pieces(Segment{{-radius, {}}, {radius, {}}, Angle::degrees(180)}).size() * 2;
    };
    EXPECT_EQ(of_circle(Length::mm(2)), 4U);      // a quarter each: off by 2.7e-4 radii
    EXPECT_EQ(of_circle(Length::mm(1000)), 12U);  // by less than 1e-6 radii
}

INSTANTIATE_TEST_SUITE_P(ByEye, Segments, testing::ValuesIn(cases),
                         [](const auto& tested) { return tested.param.name; });

TEST(Crossings, of_a_half_circle_with_a_level_line) {
    const Segment half{at(-10, 0), at(10, 0), Angle::degrees(-180)};
    const auto found = crossings(half, at(0, 5), {1, 0});
    ASSERT_EQ(found.size(), 2U);
    expect_point(half.point(found[0]), -std::sqrt(75.0), 5);
    expect_point(half.point(found[1]), std::sqrt(75.0), 5);
    EXPECT_TRUE(crossings(half, at(0, 10.5), {1, 0}).empty());
    EXPECT_TRUE(crossings(half, at(0, -1), {1, 0}).empty());
}

TEST(Crossings, of_a_line) {
    const Segment line{at(0, 0), at(10, 10), {}};
    EXPECT_EQ(crossings(line, at(0, 4), {1, 0}), std::vector<double>{0.4});
    EXPECT_TRUE(crossings(line, at(0, 1), Direction::at(Angle::degrees(45))).empty()) << "parallel";
    EXPECT_TRUE(crossings(line, at(0, 11), {1, 0}).empty()) << "beyond the end";
}

TEST(Crossings, AreFoundWhereTwoSegmentsJoinOnTheLine) {
    // A pointed arch: the upright through its point, a hair to either side.
    const Segment left{at(-5, 0), at(0, 12), -Angle::degrees(40)};
    const Segment right{at(0, 12), at(5, 0), -Angle::degrees(40)};
    for (const double off : {-1e-7, -1e-15, 0.0, 1e-15, 1e-7}) {
        const auto before = crossings(left, at(off, 0), {0, 1});
        const auto after = crossings(right, at(off, 0), {0, 1});
        ASSERT_EQ(before.size(), 1U) << off;
        ASSERT_EQ(after.size(), 1U) << off;
        EXPECT_NEAR(before[0], 1, 1e-6);
        EXPECT_NEAR(after[0], 0, 1e-6);
    }
    EXPECT_TRUE(crossings(left, at(0.01, 0), {0, 1}).empty());
}

TEST(FlatArcs, lose_no_digits) {
    // Rise 1e-6 mm over 1 m: radius 1.25e11 mm; length differs from the chord by 8 h^2 / (3 c), far under rounding.
    const Segment flat{at(0, 0), at(1000, 0), Angle::radians(4 * std::atan(2e-9))};
    EXPECT_NEAR(flat.length().mm(), 1000, 1e-9);
    EXPECT_NEAR(flat.radius().mm(), 1.25e11, 1.25e11 * 1e-9);
    expect_point(flat.point(0.5), 500, -1e-6);
}

}  // namespace
}  // namespace kerfpacket::geom
