// Circle segments: radius, chord, rise, angle and arc against handbooks, and against geometry worked out another way.

#include <cmath>
#include <optional>

#include <gtest/gtest.h>
#include <boost/math/quadrature/tanh_sinh.hpp>

#include "support/heads.h"

namespace kerfpacket {
namespace {

using namespace measure::literals;
using measure::Length;

struct Row {
    const char* source;
    double chord, rise;
    double radius;
    std::optional<double> degrees, arc;  ///< where the source gives them
    double tolerance;                    ///< what the source's rounding allows, in its own last digit
};

class Segments : public testing::TestWithParam<Row> {};

TEST_P(Segments, agree_with_the_source) {
    const Row row = GetParam();
    const Length radius = curve::radius_from_chord(Length::inches(row.chord), Length::inches(row.rise));
    const measure::Angle turn = curve::turn_from_chord(Length::inches(row.chord), Length::inches(row.rise));
    EXPECT_NEAR(radius.inches(), row.radius, row.tolerance) << row.source;
    const double arc = measure::arc_length(radius, turn).inches();
    EXPECT_NEAR(turn.degrees(), row.degrees.value_or(turn.degrees()), 2 * row.tolerance) << row.source;
    EXPECT_NEAR(arc, row.arc.value_or(arc), row.tolerance) << row.source;
}

INSTANTIATE_TEST_SUITE_P(
    Handbook, Segments,
    testing::Values(
        Row{"Sylvester, Modern Carpentry and Building, plate 3 fig. 9 (arc computed for this project)",
            60,
            10,
            50,
            {},
            64.3501,
            1e-4},
        Row{"Machinery's Handbook, 31st ed., p. 79", 16, 6, 8 + 1.0 / 3, {}, {}, 1e-9},
        Row{"Machinery's Handbook, 31st ed., p. 50, angle and arc as printed (its angle is 0.015 degrees high)",
            2 * std::sqrt(44.0), 2, 12, 67.13, 14.06, 0.01},
        Row{"Machinery's Handbook, 31st ed., p. 50, exact chord 2 sqrt(44), figures computed for this project",
            2 * std::sqrt(44.0), 2, 12, 67.115, 14.056, 5e-4},
        Row{"unit radius, 60 degrees, computed for this project", 1, 1 - std::sqrt(0.75), 1, 60, 1.0472, 5e-5},
        Row{"a half circle: Euclid III.31, the angle in it is right", 2, 1, 1, 180, 3.14159265, 1e-8}));

// Surveying field-book table on a 100-ft chord: R = 50 / sin(D/2). The middle ordinate is rounded to .001 there, so the
// radius from it is known to 0.3 % only; the check runs the other way, from radius to ordinate.
TEST(Surveying, hundred_foot_chord) {
    struct Curve {
        double degree, radius, ordinate;
    };
    for (const Curve& c : {Curve{1, 5729.6, 0.218}, Curve{7, 819.0, 1.528}}) {
        job::Wall wall;
        wall.radius = {Length::inches(12 * c.radius), {}};
        wall.angle = {measure::Angle::degrees(c.degree), {}};
        wall.side.value = job::Side::concave;
        const curve::Course course = curve::course(wall, measure::Unit::inch).value();
        EXPECT_NEAR(course.chord.inches() / 12, 100, 0.01);
        EXPECT_NEAR(course.rise.inches() / 12, c.ordinate, 5e-4);
        EXPECT_NEAR(course.curve.path().bounds().height().inches() / 12, c.ordinate, 5e-4);
        EXPECT_NEAR(curve::radius_from_chord(1200_in, Length::inches(12 * c.ordinate)).inches() / 12, c.radius,
                    c.radius * 0.0005 / c.ordinate);
    }
}

struct Circle {
    double x, y, radius;
};

/// The circle through three points by Cramer's rule: nothing of it is shared with the program.
Circle through(geom::Point a, geom::Point b, geom::Point c) {
    const double bx = (b.x - a.x).mm(), by = (b.y - a.y).mm(), cx = (c.x - a.x).mm(), cy = (c.y - a.y).mm();
    const double d = 2 * (bx * cy - by * cx);
    const double ux = (cy * (bx * bx + by * by) - by * (cx * cx + cy * cy)) / d;
    const double uy = (bx * (cx * cx + cy * cy) - cx * (bx * bx + by * by)) / d;
    return {a.x.mm() + ux, a.y.mm() + uy, std::hypot(ux, uy)};
}

curve::Curve arch(double span, double rise) {
    return tests::arch_of(
               tests::head_of(tests::opening_of(job::Shape::segmental, Length::inches(span), Length::inches(rise))))
        .front();
}

class Arches : public testing::TestWithParam<std::pair<double, double>> {};

TEST_P(Arches, are_the_circle_through_springs_and_crown) {
    const auto [span, rise] = GetParam();
    const curve::Curve curve = arch(span, rise);
    const geom::Segment segment = curve.path().segments().front();
    const Circle circle =
        through({Length::inches(-span / 2), {}}, {{}, Length::inches(rise)}, {Length::inches(span / 2), {}});
    const geom::Point centre = segment.centre();
    EXPECT_NEAR(segment.radius().mm(), circle.radius, 1e-9 * circle.radius);
    EXPECT_NEAR(centre.x.mm(), circle.x, 1e-9 * circle.radius);
    EXPECT_NEAR(centre.y.mm(), circle.y, 1e-9 * circle.radius);
    EXPECT_NEAR(curve.at(curve.length() / 2).point.y.inches(), rise, 1e-9 * span);
}

// Arc length as the integral of sqrt(1 + y'^2) = R / sqrt(R^2 - x^2), by Boost.Math.
TEST_P(Arches, are_as_long_as_their_integral) {
    const auto [span, rise] = GetParam();
    const double r = (span * span + 4 * rise * rise) / (8 * rise);
    boost::math::quadrature::tanh_sinh<double> integrator;
    // The distance to the nearer end keeps digits where a half circle's integrand runs to infinity.
    const double half = span / 2;
    const double length = integrator.integrate(
        [&](double x, double to_end) {
            const double left = x < 0 ? std::abs(to_end) : half + x;
            const double right = x > 0 ? std::abs(to_end) : half - x;
            return r / std::sqrt((r - half) * (r + half) + left * right);
        },
        -half, half);
    EXPECT_NEAR(arch(span, rise).length().inches(), length, 1e-9 * length);
}

INSTANTIATE_TEST_SUITE_P(Shapes, Arches,
                         testing::Values(std::pair{70.0, 13.5}, std::pair{72.0, 36.0}, std::pair{96.0, 0.25},
                                         std::pair{31.0, 15.0}, std::pair{214.0, 31.25}));

}  // namespace
}  // namespace kerfpacket
