// Heads made of arcs: radii and lengths against closed forms, and against circles found in the test by other means.

#include <cmath>

#include <gtest/gtest.h>
#include <boost/math/quadrature/gauss_kronrod.hpp>

#include "support/heads.h"

namespace kerfpacket {
namespace {

using namespace measure::literals;
using geom::Segment;
using measure::Length;

constexpr double pi = measure::Angle::pi;

job::Opening opening(job::Shape shape, double span, double rise) {
    return tests::opening_of(shape, Length::inches(span), Length::inches(rise));
}

/// Arcs of the run between the left leg and the point, or the right leg.
std::vector<Segment> arcs(const job::Opening& opening) {
    return tests::arch_of(tests::head_of(opening)).front().path().segments();
}

double inches(const job::Opening& opening) { return tests::arch_length(tests::head_of(opening)).inches(); }

job::Opening pointed(double span, double radius) {
    job::Opening o = tests::opening_without_rise(job::Shape::pointed, Length::inches(span));
    o.radius = tests::at_line(Length::inches(radius), tests::radius_line);
    return o;
}

// Invented opening; figures computed for this project apart from the program, rounded to the digits shown.
TEST(Pointed, alder_court) {
    const curve::Head head = tests::head_of(pointed(38.5, 46));
    EXPECT_NEAR(head.rise.inches(), 37.422, 5e-4);
    for (const curve::Curve& side : tests::arch_of(head)) {
        EXPECT_NEAR(-side.turn().degrees(), 54.442, 5e-4);
        EXPECT_NEAR(side.length().inches(), 43.709, 5e-4);
        EXPECT_NEAR(side.path().segments().front().radius().inches(), 46, 1e-10);
    }
}

// Euclid I.1: the point over an equilateral head is the third corner of the triangle on its span.
TEST(Pointed, equilateral_head) {
    const curve::Head head = tests::head_of(pointed(40, 40));
    EXPECT_NEAR(head.rise.inches(), 20 * std::sqrt(3.0), 1e-12);
    EXPECT_NEAR(tests::arch_length(head).inches(), 2 * 40 * pi / 3, 1e-11);
    EXPECT_NEAR(head.outline.corner(1).degrees(), -60, 1e-9) << "each side still rises at 30 degrees there";
    // The same head by its rise.
    EXPECT_NEAR(inches(opening(job::Shape::pointed, 40, 20 * std::sqrt(3.0))), 2 * 40 * pi / 3, 1e-11);
}

// The circle whose centre on the spring line is as far from the spring as from the point: Pythagoras.
TEST(Pointed, radius_from_rise_is_that_of_the_circle_through_spring_and_point) {
    const Segment side = arcs(opening(job::Shape::pointed, 30, 41)).front();
    const double radius = (15 * 15 + 41 * 41) / (2 * 15.0);
    EXPECT_NEAR(side.radius().inches(), radius, 1e-11);
    EXPECT_NEAR(side.centre().y.inches(), 0, 1e-11) << "centre on the spring line";
    EXPECT_NEAR(side.centre().x.inches(), radius - 15, 1e-11);
}

// Sylvester, Modern Carpentry and Building, plate 3 fig. 9: span 60, rise 10 gives diameter 100; arc computed for this
// project.
TEST(Segmental, sylvester) {
    const Segment arc = arcs(opening(job::Shape::segmental, 60, 10)).front();
    EXPECT_NEAR(arc.radius().inches(), 50, 1e-12);
    EXPECT_NEAR(arc.length().inches(), 64.3501, 5e-5);
}

// Past half the span the same circle: Machinery's Handbook, 31st ed., p. 79, 16 by 6 on radius 8-1/3, seen from the
// other side: the rise of the rest of that circle is 16-2/3 - 6.
TEST(Horseshoe, is_the_rest_of_the_circle) {
    const job::Opening rest = opening(job::Shape::horseshoe, 16, 50.0 / 3 - 6);
    EXPECT_NEAR(arcs(rest).front().radius().inches(), 25.0 / 3, 1e-12);
    EXPECT_NEAR(inches(rest) + inches(opening(job::Shape::segmental, 16, 6)), 2 * pi * 25 / 3, 1e-11);
    EXPECT_NEAR(curve::widest(tests::head_of(rest)).inches(), 50.0 / 3, 1e-11);
}

// The classical construction (drawn with compasses in old carpentry books; from memory): cut the excess of half the
// span over the rise off the line from spring to crown, halve the rest square; where that meets the spring line and the
// centre line stand the centres. Here by the intersection of lines, not by the program's formula.
TEST(ThreeCentred, classical_construction) {
    const double a = 40;
    const double b = 25;
    const std::vector<Segment> drawn = arcs(opening(job::Shape::three_centred, 2 * a, b));
    ASSERT_EQ(drawn.size(), 3U);
    const double c = std::hypot(a, b);
    const double t = (c - (a - b)) / 2 / c;
    const double x = -a + a * t;
    const double y = b * t;
    // Square to the line (a, b): (x + b w, y - a w).
    EXPECT_NEAR(drawn[0].centre().x.inches(), x + b * (y / a), 1e-11);
    EXPECT_NEAR(drawn[0].centre().y.inches(), 0, 1e-11);
    EXPECT_NEAR(drawn[1].centre().x.inches(), 0, 1e-11);
    EXPECT_NEAR(drawn[1].centre().y.inches(), y - a * (-x / b), 1e-11);
    EXPECT_NEAR(drawn[0].radius().inches(), a + drawn[0].centre().x.inches(), 1e-11);
    EXPECT_NEAR(drawn[1].radius().inches(), b - drawn[1].centre().y.inches(), 1e-11);
}

/// Circles that touch inside have centres as far apart as their radii differ (Euclid III.11), the contact in line.
void expect_tangent(const Segment& small, const Segment& large) {
    const Length apart = geom::distance(small.centre(), large.centre());
    EXPECT_NEAR(apart.inches(), (large.radius() - small.radius()).inches(), 1e-10 * large.radius().inches());
    EXPECT_NEAR(geom::distance(large.centre(), small.to).inches(), large.radius().inches(),
                1e-10 * large.radius().inches());
}

TEST(ThreeCentred, arcs_are_tangent_and_sum_to_the_closed_form) {
    for (const auto& [a, b, r] : {std::tuple{40.0, 25.0, 12.0}, {36.0, 12.0, 5.0}, {30.0, 29.0, 3.0}}) {
        job::Opening o = opening(job::Shape::three_centred, 2 * a, b);
        o.side_radius = tests::at_line(Length::inches(r), tests::radius_line);
        const std::vector<Segment> drawn = arcs(o);
        expect_tangent(drawn[0], drawn[1]);
        const double big = (a * a + b * b - 2 * a * r) / (2 * (b - r));
        EXPECT_NEAR(drawn[1].radius().inches(), big, 1e-10 * big);
        // Half the crown arc's angle has the sine (a - r)/(R - r), as the triangle of the centres says.
        const double crown = std::asin((a - r) / (big - r));
        EXPECT_NEAR(inches(o), 2 * (r * (pi / 2 - crown) + big * crown), 1e-9 * inches(o));
    }
}

struct FourCentres {
    double a, b, r, big;  ///< half the span, rise, radii of side and crown arcs

    /// Of the crown arc when the side arc has turned through t.
    double centre_x(double t) const { return r - a + (big - r) * std::cos(t); }
    double centre_y(double t) const { return -(big - r) * std::sin(t); }
    double off_the_point(double t) const { return std::hypot(centre_x(t), b - centre_y(t)) - big; }

    /// Half the head: the side arc's turn by bisection until the crown arc, drawn tangent, goes through the point.
    double half_length() const {
        double low = 0;
        double high = pi / 2;
        for (int i = 0; i < 100; ++i) {
            const double t = (low + high) / 2;
            (off_the_point(low) * off_the_point(t) <= 0 ? high : low) = t;
        }
        return r * low + big * (pi - low - std::atan2(b - centre_y(low), -centre_x(low)));
    }
};

TEST(Tudor, arcs_are_tangent_and_sum_to_what_a_search_finds) {
    for (const FourCentres& c : {FourCentres{33, 22, 9, 80}, {30, 20, 8, 35}, {20, 33, 14, 60}}) {
        job::Opening o = opening(job::Shape::tudor, 2 * c.a, c.b);
        o.side_radius = tests::at_line(Length::inches(c.r), tests::radius_line);
        o.crown_radius = tests::at_line(Length::inches(c.big), tests::second_radius_line);
        const std::vector<Segment> drawn = arcs(o);
        expect_tangent(drawn[0], drawn[1]);
        EXPECT_NEAR(drawn[1].to.x.inches(), 0, 1e-11);
        EXPECT_NEAR(drawn[1].to.y.inches(), c.b, 1e-11);
        ASSERT_LT(c.off_the_point(0) * c.off_the_point(pi / 2), 0);
        EXPECT_NEAR(inches(o), 2 * c.half_length(), 1e-9 * c.half_length());
    }
}

// Two equal radii when none is given: an S from level to level over half the span; with tan(lean/2) = rise/half each
// arc has the radius half/(2 sin lean), and the one in the middle is as long as both others.
TEST(Eyebrow, sum_of_arcs) {
    const double half = 36;
    const double rise = 9;
    const double lean = 2 * std::atan(rise / half);
    const double radius = half / (2 * std::sin(lean));
    EXPECT_NEAR(inches(opening(job::Shape::eyebrow, 2 * half, rise)), 4 * radius * lean, 1e-9 * half);
    job::Opening uneven = opening(job::Shape::eyebrow, 2 * half, rise);
    uneven.reverse_radius = tests::at_line(20_in, tests::radius_line);
    const std::vector<Segment> drawn = arcs(uneven);
    // Circles that touch outside: centres as far apart as the sum of the radii (Euclid III.12).
    EXPECT_NEAR(geom::distance(drawn[0].centre(), drawn[1].centre()).inches(), 2 * radius, 1e-10);
    EXPECT_NEAR(drawn[0].centre().x.inches(), -half, 1e-11) << "level at the spring";
    EXPECT_NEAR(drawn[1].radius().inches(), 2 * radius - 20, 1e-10);
    EXPECT_NEAR(inches(uneven), 4 * radius * lean, 1e-9 * half) << "the radii's sum decides the length";
}

/// Between the arch and the line of its springs, by quadrature along the curve.
double area_under(const job::Opening& o) {
    const curve::Head head = tests::head_of(o);
    double area = 0;
    for (const curve::Curve& run : tests::arch_of(head)) {
        area += boost::math::quadrature::gauss_kronrod<double, 31>::integrate(
            [&](double s) {
                const curve::Spot spot = run.at(Length::mm(s));
                return spot.point.y.mm() * spot.direction.x;
            },
            0, run.length().mm(), 10, 1e-13);
    }
    return area / (25.4 * 25.4);
}

TEST(Areas, are_those_of_the_closed_forms) {
    EXPECT_NEAR(area_under(tests::opening_without_rise(job::Shape::semicircular, 36_in)), pi * 18 * 18 / 2, 1e-9 * 509);
    // Two sectors of 60 degrees less the triangle they share.
    EXPECT_NEAR(area_under(pointed(40, 40)), 40 * 40 * (pi / 3 - std::sqrt(3.0) / 4), 1e-9 * 983);
    // A parabola takes two thirds of its box (Archimedes), an ellipse pi/4.
    EXPECT_NEAR(area_under(opening(job::Shape::parabolic, 60, 20)), 60 * 20 * 2 / 3.0, 1e-9 * 800);
    EXPECT_NEAR(area_under(opening(job::Shape::elliptical, 84, 21)), 84 * 21 * pi / 4, 1e-9 * 1385);
    // An eyebrow is its own complement: half of its box.
    EXPECT_NEAR(area_under(opening(job::Shape::eyebrow, 72, 9)), 72 * 9 / 2.0, 1e-9 * 324);
}

}  // namespace
}  // namespace kerfpacket
