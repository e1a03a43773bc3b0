// The curve class itself: lengths, places, parallels, parts, and the arcs that draw it.

#include <gtest/gtest.h>

#include <algorithm>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <boost/math/special_functions/ellint_2.hpp>
#include <random>

#include "curve/curve.h"

namespace kerfpacket::curve {
namespace {

using namespace measure::literals;

/// Upper half of an ellipse, left to right.
Parametric half_ellipse(double a, double b) {
    return {[a, b](double u) {
                const double c = std::cos(u);
                const double s = std::sin(u);
                return Jet{{Length::mm(-a * c), Length::mm(b * s)},
                           {Length::mm(a * s), Length::mm(b * c)},
                           {Length::mm(a * c), Length::mm(-b * s)}};
            },
            0, Angle::pi};
}

/// y = c x^3 from -w to w: bends right, then left.
Parametric cubic(double c, double w) {
    return {[c](double x) {
                return Jet{{Length::mm(x), Length::mm(c * x * x * x)},
                           {1_mm, Length::mm(3 * c * x * x)},
                           {0_mm, Length::mm(6 * c * x)}};
            },
            -w, w};
}

/// Straight, a quarter turn left, an eighth right.
Curve of_segments() {
    return Curve::of(Path(
        {{{0_mm, 0_mm}, {10_mm, 0_mm}, {}},
         {{10_mm, 0_mm}, {15_mm, 5_mm}, Angle::degrees(90)},
         {{15_mm, 5_mm}, {15_mm + 8_mm * (1 - std::sqrt(0.5)), 5_mm + 8_mm * std::sqrt(0.5)}, Angle::degrees(-45)}}));
}

TEST(Curve, of_lines_and_arcs_adds_up) {
    const Curve curve = of_segments();
    EXPECT_NEAR(curve.length().mm(), 10 + 5 * Angle::pi / 2 + 8 * Angle::pi / 4, 1e-12);
    EXPECT_NEAR(curve.turn().degrees(), 45, 1e-12);
    EXPECT_TRUE(curve.is_exact_path());
    ASSERT_EQ(curve.joints().size(), 4U);
    EXPECT_NEAR(curve.joints()[2].mm(), 10 + 5 * Angle::pi / 2, 1e-12);
    const Spot in_arc = curve.at(10_mm + 5_mm * (Angle::pi / 6));
    EXPECT_NEAR(in_arc.point.x.mm(), 10 + 5 * std::sin(Angle::pi / 6), 1e-12);
    EXPECT_NEAR(in_arc.point.y.mm(), 5 - 5 * std::cos(Angle::pi / 6), 1e-12);
    EXPECT_NEAR(in_arc.curvature, 0.2, 1e-12);
    EXPECT_NEAR(in_arc.turned.degrees(), 30, 1e-12);
}

TEST(Curve, goes_on_by_its_own_law_beyond_its_ends) {
    const Curve curve = of_segments();
    EXPECT_NEAR(curve.at(-3_mm).point.x.mm(), -3, 1e-12);
    const Spot beyond = curve.at(curve.length() + 8_mm * (Angle::pi / 4));
    // Half a turn of the last circle from its start in all: level at its far side.
    EXPECT_NEAR(beyond.point.x.mm(), 15 + 8, 1e-12);
    EXPECT_NEAR(beyond.point.y.mm(), 5 + 8, 1e-12);
    EXPECT_NEAR(beyond.direction.x, 1, 1e-12);

    const Curve ellipse({half_ellipse(40, 25)});
    EXPECT_LT(ellipse.at(-1_mm).point.y.mm(), -0.9);
    EXPECT_NEAR(ellipse.at(-1_mm).turned.radians(), -ellipse.at(1_mm).turned.radians(), 1e-12);
}

TEST(Curve, ellipse_has_the_length_of_the_elliptic_integral) {
    for (const double b : {39.9, 25.0, 12.0, 4.0, 80.0}) {
        const double a = 40;
        const Curve curve({half_ellipse(a, b)});
        const double longer = std::max(a, b);
        const double shorter = std::min(a, b);
        const double k = std::sqrt(1 - shorter * shorter / longer / longer);
        EXPECT_NEAR(curve.length().mm() / (2 * longer * boost::math::ellint_2(k)), 1, 1e-12) << b;
        EXPECT_NEAR(curve.turn().degrees(), -180, 1e-10);
        EXPECT_NEAR(curve.at(curve.length() / 2).curvature, -b / (a * a), 1e-12);
        EXPECT_NEAR(curve.at({}).curvature, -a / (b * b), 1e-12 * a);
    }
}

TEST(Curve, place_at_a_distance_lies_at_that_distance) {
    const Curve curve({half_ellipse(40, 12)});
    for (int i = 1; i < 40; ++i) {
        const Length along = curve.length() * (i / 40.0);
        const Spot spot = curve.at(along);
        const double u = std::acos(-spot.point.x.mm() / 40);
        const auto rate = [](double v) { return std::hypot(40 * std::sin(v), 12 * std::cos(v)); };
        const double length = boost::math::quadrature::gauss_kronrod<double, 31>::integrate(rate, 0, u, 12, 1e-13);
        EXPECT_NEAR(length, along.mm(), 1e-9) << i;
    }
}

TEST(Curve, followed_is_what_it_is_at_each_place) {
    std::mt19937 random(14);
    const auto check = [&](const Curve& curve) {
        std::vector<Length> places = curve.joints();
        for (int i = -30; i <= 630; ++i) places.push_back(curve.length() * (i / 600.0));
        const auto follow = [&] {
            Curve::Following following(curve);
            for (const Length place : places) {
                const Spot spot = curve.at(place);
                EXPECT_EQ(following.curvature(place), spot.curvature) << place.mm();
                EXPECT_EQ(following.turned(place).radians(), spot.turned.radians()) << place.mm();
            }
        };
        std::sort(places.begin(), places.end());
        follow();
        std::reverse(places.begin(), places.end());
        follow();
        std::shuffle(places.begin(), places.end(), random);
        follow();
    };
    for (const Curve& whole : {of_segments(), Curve({half_ellipse(40, 25)}), Curve({cubic(0.002, 20)})}) {
        const Length length = whole.length();
        for (const Curve& curve : {whole, whole.part(length * 0.13, length * 0.82), whole.part(-1_mm, length / 3)}) {
            check(curve);
            check(curve.parallel(-1.5_mm));
            check(curve.going_on_straight());
        }
    }
}

TEST(Curve, parallel_keeps_normals_and_changes_length_by_the_turn) {
    const Curve curve({half_ellipse(40, 25)});
    for (const Length left : {7_mm, -9_mm}) {
        const Curve parallel = curve.parallel(left);
        EXPECT_NEAR(parallel.length().mm(), (curve.length() - left * curve.turn().radians()).mm(), 1e-10);
        for (const double part : {0.0, 0.1, 0.37, 0.5, 0.9, 1.0}) {
            const Length here = curve.length() * part;
            const Length there = curve.on_parallel(here, left);
            const Spot a = curve.at(here);
            const Spot b = parallel.at(there);
            EXPECT_NEAR(geom::distance(a.point, b.point).mm(), std::abs(left.mm()), 1e-9);
            EXPECT_NEAR(a.direction.x, b.direction.x, 1e-9);
            EXPECT_NEAR(1 / b.curvature, 1 / a.curvature - left.mm(), 1e-6);
            EXPECT_NEAR(curve.from_parallel(there, left).mm(), here.mm(), 1e-9);
        }
    }
}

TEST(Curve, parts_reversal_and_movement_keep_the_wood_in_place) {
    const Curve curve = Curve({half_ellipse(40, 25)}).parallel(5_mm);
    const Curve part = curve.part(11_mm, 63_mm);
    EXPECT_NEAR(part.length().mm(), 52, 1e-9);
    EXPECT_LT(geom::distance(part.at(7_mm).point, curve.at(18_mm).point).mm(), 1e-9);
    const Curve longer = of_segments().part(-4_mm, 30_mm);
    EXPECT_NEAR(longer.length().mm(), 34, 1e-9);

    const Curve back = curve.reversed();
    EXPECT_LT(geom::distance(back.at(9_mm).point, curve.at(curve.length() - 9_mm).point).mm(), 1e-9);
    EXPECT_NEAR(back.at(9_mm).curvature, -curve.at(curve.length() - 9_mm).curvature, 1e-9);

    const Angle by = Angle::degrees(33);
    const Curve elsewhere = curve.turned(by).moved({3_mm, -8_mm});
    const Point wanted = geom::turned(curve.at(20_mm).point, by) + Point{3_mm, -8_mm};
    EXPECT_LT(geom::distance(elsewhere.at(20_mm).point, wanted).mm(), 1e-9);
}

TEST(Curve, sharpest_places) {
    const Curve ellipse({half_ellipse(40, 25)});
    const auto right = ellipse.sharpest_right({}, ellipse.length());
    EXPECT_NEAR(right.curvature, 40.0 / 625, 1e-6);
    EXPECT_EQ(ellipse.sharpest_left({}, ellipse.length()).curvature, 0);
    // Of a tall ellipse the crown is sharpest.
    const Curve tall({half_ellipse(25, 40)});
    const auto crown = tall.sharpest_right({}, tall.length());
    EXPECT_NEAR(crown.curvature, 40.0 / 625, 1e-9);
    EXPECT_NEAR(crown.at.mm(), tall.length().mm() / 2, 1e-3);
    const Curve mixed = of_segments();
    EXPECT_NEAR(mixed.sharpest_left({}, mixed.length()).curvature, 1 / 5.0, 1e-9);
    EXPECT_NEAR(mixed.sharpest_right({}, mixed.length()).curvature, 1 / 8.0, 1e-9);
    EXPECT_EQ(mixed.sharpest_right({}, 12_mm).curvature, 0);
}

TEST(Curve, inflections) {
    const Curve curve({cubic(1e-4, 50)});
    ASSERT_EQ(curve.inflections().size(), 1U);
    EXPECT_NEAR(curve.at(curve.inflections()[0]).point.x.mm(), 0, 1e-6);
    const Curve mixed = of_segments();
    ASSERT_EQ(mixed.inflections().size(), 1U);
    EXPECT_NEAR(mixed.inflections()[0].mm(), mixed.joints()[2].mm(), 1e-3);
    EXPECT_TRUE(Curve({half_ellipse(40, 25)}).inflections().empty());
}

TEST(Curve, arcs_that_draw_it_stay_on_it) {
    for (const Curve& curve : {Curve({half_ellipse(1000, 260)}), Curve({half_ellipse(1000, 260)}).parallel(-19.05_mm),
                               Curve({half_ellipse(1000, 260)}).parallel(100_mm), Curve({cubic(1e-6, 700)})}) {
        const Path path = curve.path();
        EXPECT_LT(geom::distance(path.start(), curve.at({}).point).mm(), 1e-9);
        EXPECT_LT(geom::distance(path.end(), curve.at(curve.length()).point).mm(), 1e-9);
        EXPECT_NEAR(path.length() / curve.length(), 1, 1e-8);
        EXPECT_NEAR(path.turn().radians(), curve.turn().radians(), 1e-9);
        EXPECT_LT(path.segments().size(), 1500U);
        for (int i = 0; i <= 999; ++i) {
            const double part = i / 999.0;
            EXPECT_LT(geom::distance(path.at(path.length() * part).point, curve.at(curve.length() * part).point).mm(),
                      2e-3)
                << part;
        }
        for (std::size_t i = 1; i < path.segments().size(); ++i) {
            EXPECT_EQ(path.segments()[i - 1].to, path.segments()[i].from);
            const Direction before = path.segments()[i - 1].end_direction();
            const Direction after = path.segments()[i].start_direction();
            EXPECT_NEAR(before.x * after.y - before.y * after.x, 0, 1e-7);
        }
    }
}

// Past a quarter circle on straight, as the circle's tangent: its parallels too, and what is cut from it.
TEST(GoingOnStraight, leaves_at_the_tangent) {
    const Point right{Length::mm(100), {}};
    const Point top{{}, Length::mm(100)};
    const Curve arc = Curve({geom::Segment{right, top, Angle::degrees(90)}}).going_on_straight();
    const Length end = arc.length();
    const Length by = Length::mm(40);
    EXPECT_NEAR(end.mm(), 50 * Angle::pi, 1e-9);
    EXPECT_LT(distance(arc.at(-by).point, {Length::mm(100), -by}).mm(), 1e-9);
    EXPECT_LT(distance(arc.at(end + by).point, {-by, Length::mm(100)}).mm(), 1e-9);
    EXPECT_EQ(arc.at(end + by).curvature, 0);
    EXPECT_NEAR(arc.at(end + by).turned.degrees(), 90, 1e-9);
    const Curve inner = arc.parallel(Length::mm(30));
    EXPECT_LT(distance(inner.at(inner.length() + by).point, {-by, Length::mm(70)}).mm(), 1e-9);
    EXPECT_NEAR(arc.on_parallel(end + by, Length::mm(30)).mm(), (inner.length() + by).mm(), 1e-9);
    EXPECT_NEAR(arc.from_parallel(inner.length() + by, Length::mm(30)).mm(), (end + by).mm(), 1e-9);
    const Path path = inner.part(-by, inner.length() + by).path();
    ASSERT_EQ(path.segments().size(), 3U);
    EXPECT_TRUE(path.segments().front().is_line() && path.segments().back().is_line());
    EXPECT_LT(distance(path.start(), {Length::mm(70), -by}).mm(), 1e-9);
    EXPECT_NEAR(path.length().mm(), (inner.length() + by * 2).mm(), 1e-3);
    const Path beyond = arc.part(end + by / 4, end + by).path();
    EXPECT_NEAR(beyond.length().mm(), 30, 1e-9);
    EXPECT_LT(distance(arc.reversed().at(-by).point, arc.at(end + by).point).mm(), 1e-9);
    // A part goes on so only at an end of the whole.
    const Curve half = arc.part({}, end / 2);
    EXPECT_NE(half.at(half.length() + by).curvature, 0);
    EXPECT_EQ(half.at(-by).curvature, 0);
}

}  // namespace
}  // namespace kerfpacket::curve
