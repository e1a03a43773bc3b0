// Ellipse, parabola and catenary: lengths and radii against closed forms, elliptic integrals and the quadrature of
// Boost.Math on formulas written down here afresh.

#include <cmath>

#include <gtest/gtest.h>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <boost/math/special_functions/ellint_2.hpp>

#include "support/heads.h"

namespace kerfpacket {
namespace {

using namespace measure::literals;
using measure::Length;

curve::Curve arch(job::Shape shape, double span, double rise) {
    return tests::arch_of(tests::head_of(tests::opening_of(shape, Length::inches(span), Length::inches(rise)))).front();
}

double radius_at(const curve::Curve& curve, Length at) {
    return Length::mm(1 / std::abs(curve.at(at).curvature)).inches();
}

/// Length of y(x) from its slope, adaptively; for slopes that stay finite.
template <class Slope>
double length_of(Slope slope, double from, double to) {
    return boost::math::quadrature::gauss_kronrod<double, 31>::integrate(
        [&](double x) { return std::hypot(1.0, slope(x)); }, from, to, 15, 1e-13);
}

// Complete elliptic integral of the second kind, Abramowitz & Stegun 1964, table 17, with parameter m = k^2: a quarter
// of an ellipse with a = 1 is E(1 - b^2) long.
TEST(Ellipse, quarters_of_the_handbook) {
    struct Row {
        double m, quarter;
    };
    for (const Row& row : {Row{0.25, 1.467462209339427}, Row{0.5, 1.350643881047676}, Row{0.75, 1.211056027568459}}) {
        const curve::Curve half = arch(job::Shape::elliptical, 2, std::sqrt(1 - row.m));
        EXPECT_NEAR(half.length().inches(), 2 * row.quarter, 1e-14 * row.quarter * 20);
    }
}

// Perimeter computed for this project, cut after the last digit shown; Ramanujan's second formula gives 9.688448216.
TEST(Ellipse, perimeter_two_by_one) {
    EXPECT_NEAR(2 * arch(job::Shape::elliptical, 4, 1).length().inches(), 9.688448220, 1e-9);
}

// 4 a E(k) with the library's integral, whose argument is the modulus k; wide and tall.
TEST(Ellipse, lengths_are_those_of_the_library) {
    for (const auto& [a, b] : {std::pair{42.125, 21.5}, {30.0, 29.9}, {60.0, 0.5}, {12.0, 40.0}}) {
        const double major = std::max(a, b);
        const double minor = std::min(a, b);
        const double half = 2 * major * boost::math::ellint_2(std::sqrt(1 - (minor / major) * (minor / major)));
        EXPECT_NEAR(arch(job::Shape::elliptical, 2 * a, b).length().inches(), half, 1e-12 * half) << a << " " << b;
    }
}

// Radii of curvature a^2/b at the crown and b^2/a at the springs: textbook, from memory.
TEST(Ellipse, radii_at_crown_and_springs) {
    const curve::Curve half = arch(job::Shape::elliptical, 84.25, 21.5);
    EXPECT_NEAR(radius_at(half, half.length() / 2), 42.125 * 42.125 / 21.5, 1e-9 * 83);
    EXPECT_NEAR(radius_at(half, {}), 21.5 * 21.5 / 42.125, 1e-9 * 11);
    EXPECT_NEAR(radius_at(half, half.length()), 21.5 * 21.5 / 42.125, 1e-9 * 11);
}

// Figures of an invented opening, computed for this project apart from the program and rounded to the digits shown,
// there without regard to its springs, which differ by an eighth of an inch.
TEST(Ellipse, quarry_road) {
    const curve::Curve level = arch(job::Shape::elliptical, 84.25, 21.5);
    EXPECT_NEAR(level.length().inches(), 102.585, 5e-4);
    EXPECT_NEAR(level.parallel(-0.75_in).length().inches(), 100.229, 5e-4);
    EXPECT_NEAR(radius_at(level, level.length() / 2), 82.54, 5e-3);
    EXPECT_NEAR(radius_at(level, {}), 10.97, 5e-3);
    const job::Opening measured =
        tests::on_legs(tests::opening_of(job::Shape::elliptical, 84.25_in, 21.5_in), Length::inches(72.125), 72_in);
    // A sixteenth more on one side, a sixteenth less on the other: that changes the length by far less than either.
    EXPECT_NEAR(tests::arch_length(tests::head_of(measured)).inches(), 102.585, 2e-3);
}

// With h half the span, b the rise and m = 2 b/h the slope at the spring: s = h (sqrt(1 + m^2) + asinh(m)/m). Textbook,
// from memory; the quadrature beside it is independent of that.
TEST(Parabola, length_is_the_closed_form) {
    for (const auto& [span, rise] : {std::pair{60.0, 20.0}, {96.0, 0.25}, {30.0, 50.0}}) {
        const double h = span / 2;
        const double m = 2 * rise / h;
        const curve::Curve curve = arch(job::Shape::parabolic, span, rise);
        const double closed = h * (std::sqrt(1 + m * m) + std::asinh(m) / m);
        EXPECT_NEAR(curve.length().inches(), closed, 1e-12 * closed);
        const double b = rise;
        const double integral = 2 * length_of([&](double x) { return -2 * b * x / (h * h); }, 0, h);
        EXPECT_NEAR(curve.length().inches(), integral, 1e-9 * integral);
        // Radius at the vertex of y = x^2/(4 f) is 2 f = h^2/(2 b).
        EXPECT_NEAR(radius_at(curve, curve.length() / 2), h * h / (2 * b), 1e-9 * h * h / b);
    }
}

TEST(Parabola, quarter_points_stand_at_three_quarters_of_the_rise) {
    const curve::Curve curve = arch(job::Shape::parabolic, 60, 20);
    const geom::Path path = curve.path();
    for (const geom::Segment& s : path.segments())
        for (const double f : geom::crossings(s, {-15_in, {}}, {0, 1})) EXPECT_NEAR(s.point(f).y.inches(), 15, 1e-5);
}

// y = cosh x from 0 to 1 is sinh 1 long.
TEST(Catenary, unit_chain) {
    const curve::Curve curve = arch(job::Shape::catenary, 2, std::cosh(1.0) - 1);
    EXPECT_NEAR(curve.length().inches(), 2 * std::sinh(1.0), 1e-13);
    EXPECT_NEAR(curve.length().inches() / 2, 1.1752012, 5e-8);
    EXPECT_NEAR(radius_at(curve, curve.length() / 2), 1, 1e-12);
}

// Computed for this project: a = 51.5674, length 110.4759. The radius at the crown is a.
TEST(Catenary, span_96_rise_24) {
    const curve::Curve curve = arch(job::Shape::catenary, 96, 24);
    EXPECT_NEAR(radius_at(curve, curve.length() / 2), 51.5674, 5e-5);
    EXPECT_NEAR(curve.length().inches(), 110.4759, 5e-5);
}

// With a from the length and the rise, a = (s^2 - b^2)/(2 b) for half the chain: textbook, from memory. The closed form
// must meet itself, and the quadrature of sinh(x/a).
TEST(Catenary, length_rise_and_parameter_agree) {
    for (const auto& [span, rise] : {std::pair{96.0, 24.0}, {60.0, 0.1}, {40.0, 90.0}}) {
        const curve::Curve curve = arch(job::Shape::catenary, span, rise);
        const double s = curve.length().inches() / 2;
        const double a = radius_at(curve, curve.length() / 2);
        EXPECT_NEAR((s - rise) * (s + rise) / (2 * rise), a, 1e-9 * a);
        EXPECT_NEAR(a * std::sinh(span / 2 / a), s, 1e-12 * s);
        const double integral = length_of([&](double x) { return std::sinh(x / a); }, 0, span / 2);
        EXPECT_NEAR(s, integral, 1e-9 * s);
    }
}

}  // namespace
}  // namespace kerfpacket
