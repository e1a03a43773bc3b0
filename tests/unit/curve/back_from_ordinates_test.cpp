// Heads of this program measured as a tape would: the fair curve through the points against the head itself, also
// between the points.

#include <gtest/gtest.h>

#include "curve/survey.h"
#include "measured_points.h"
#include "support/heads.h"

namespace kerfpacket::curve {
namespace {

using namespace measure::literals;
using job::Shape;

/// A head as so many of its points, left to right, about 1/32 in apart.
std::vector<Point> dense(const Head& head) {
    std::vector<Point> points;
    for (const Curve& run : tests::arch_of(head)) {
        const auto count = static_cast<int>(run.length().inches() * 32);
        for (int i = 0; i <= count; ++i) points.push_back(run.at(run.length() * (i / double(count))).point);
    }
    return points;
}

/// At even steps from the left spring, and closer by the springs where asked for.
std::vector<Point> stations(const std::vector<Point>& along, Length step, const std::vector<double>& near_ends = {}) {
    const Length left = along.front().x;
    const Length right = along.back().x;
    std::vector<Length> at;
    for (Length x = left + step; x < right - step / 50; x += step) at.push_back(x);
    for (const double inches : near_ends) {
        at.push_back(left + Length::inches(inches));
        at.push_back(right - Length::inches(inches));
    }
    std::sort(at.begin(), at.end());
    std::vector<Point> points{along.front()};
    for (const Length x : at) {
        const auto next = std::find_if(along.begin() + 1, along.end(), [&](Point p) { return p.x >= x; });
        const Point a = *std::prev(next);
        points.push_back(a + (*next - a) * ((x - a.x) / (next->x - a.x)));
    }
    points.push_back(along.back());
    return points;
}

Length off(Point p, Point a, Point b) {
    const Point ab = b - a;
    const Point ap = p - a;
    const double length = ab.x.mm() * ab.x.mm() + ab.y.mm() * ab.y.mm();
    const double part = std::clamp((ap.x.mm() * ab.x.mm() + ap.y.mm() * ab.y.mm()) / length, 0.0, 1.0);
    return distance(p, a + ab * part);
}

/// How far the head lies off the curve where it lies furthest. Both run left to right; the search looks on from the
/// place of the point before, for the first one everywhere.
Length furthest(const std::vector<Point>& head, const Curve& curve) {
    constexpr int places = 1500;
    std::vector<Point> on_curve;
    for (int i = 0; i <= places; ++i) on_curve.push_back(curve.at(curve.length() * (i / double{places})).point);
    Length worst;
    std::size_t at = 0;
    for (std::size_t i = 0; i < head.size(); i += 4) {
        Length nearest = 1000_in;
        const std::size_t from = i > 0 && at > 25 ? at - 25 : 0;
        const std::size_t to = i > 0 ? std::min<std::size_t>(places, at + 120) : places;
        for (std::size_t k = from; k < to; ++k) {
            const Length here = off(head[i], on_curve[k], on_curve[k + 1]);
            if (here >= nearest) continue;
            nearest = here;
            at = k;
        }
        worst = std::max(worst, nearest);
    }
    return worst;
}

struct Case {
    Shape shape;
    double span;
    double rise;
};

std::vector<Point> head_points(const Case& c) {
    const bool half = c.shape == Shape::semicircular;
    return dense(
        tests::head_of(tests::opening_of(c.shape, Length::inches(c.span), Length::inches(half ? c.span / 2 : c.rise))));
}

/// Shapes whose curvature is steady. A horseshoe has two heights at a station beside its springs and is not measured
/// so.
const std::vector<Case> steady{
    {Shape::segmental, 72, 11.5},  {Shape::segmental, 60, 12},  {Shape::semicircular, 72, 36},
    {Shape::semicircular, 60, 30}, {Shape::elliptical, 72, 20}, {Shape::elliptical, 60, 20},
    {Shape::parabolic, 72, 24},    {Shape::parabolic, 60, 24},  {Shape::parabolic, 72, 36},
    {Shape::parabolic, 40, 15},    {Shape::parabolic, 50, 18},  {Shape::catenary, 60, 30},
    {Shape::catenary, 72, 24}};

TEST(BackFromOrdinates, right_at_six_inches_is_right_all_over) {
    for (const Case& c : steady) {
        const auto head = head_points(c);
        const FairFit fit = fit_fair(stations(head, 6_in), {});
        EXPECT_LE(furthest(head, fit.curve), 1_in / 32) << static_cast<int>(c.shape) << " " << c.span;
        EXPECT_LE(fit.misses.worst(), 0.002_in) << static_cast<int>(c.shape) << " " << c.span;
    }
}

TEST(BackFromOrdinates, few_points_are_enough_for_a_short_head) {
    for (const Case& c : {Case{Shape::catenary, 40, 16}, Case{Shape::catenary, 36, 12}, Case{Shape::parabolic, 36, 12},
                          Case{Shape::elliptical, 40, 14}, Case{Shape::segmental, 36, 8}}) {
        const auto head = head_points(c);
        EXPECT_LE(furthest(head, fit_fair(stations(head, 6_in), {}).curve), 1_in / 32) << c.span;
    }
}

TEST(BackFromOrdinates, a_sixteenth_either_way_stays_within_three_thirty_seconds_in_95_of_100) {
    for (const Case& c : steady) {
        const auto head = head_points(c);
        const auto exact = stations(head, 6_in);
        int good = 0;
        for (unsigned seed = 1; seed <= 100; ++seed) {
            std::mt19937 random(seed);
            std::uniform_real_distribution<double> noise(-1.0 / 16, 1.0 / 16);
            auto points = exact;
            for (std::size_t i = 1; i + 1 < points.size(); ++i) points[i].y += Length::inches(noise(random));
            if (furthest(head, fit_fair(points, {}).curve) <= 3_in / 32) ++good;
        }
        EXPECT_GE(good, 95) << static_cast<int>(c.shape) << " " << c.span;
    }
}

// Nor do angles at its ends make a fair curve any worse: those of the head itself, from 53 degrees up to 53 down.
TEST(BackFromOrdinates, true_end_angles_leave_a_parabola_right) {
    const auto head = head_points({Shape::parabolic, 72, 24});
    Fairness fairness;
    fairness.end_angles = {Angle::radians(std::atan(4.0 / 3)), Angle::radians(-std::atan(4.0 / 3))};
    const Curve curve = fit_fair(stations(head, 6_in), fairness).curve;
    EXPECT_LE(furthest(head, curve), 1_in / 32);
    EXPECT_LE(curve.sharpest_right({}, curve.length()).curvature * 25.4, 1.1 / 27);  // at the crown, span^2 / 8 rise
}

// Written to the sixteenth, which is up to 1/32 in off: between the steep stations of a parabola no further.
TEST(BackFromOrdinates, a_parabola_written_to_the_sixteenth_is_no_further_off_between_its_points) {
    for (const Case& c : {Case{Shape::parabolic, 66, 21}, Case{Shape::parabolic, 58.75, 18.875},
                          Case{Shape::parabolic, 60.5, 20.1875}, Case{Shape::parabolic, 67, 19.625}}) {
        const auto head = head_points(c);
        auto points = stations(head, 6_in);
        for (std::size_t i = 1; i + 1 < points.size(); ++i)
            points[i].y = Length::inches(std::round(points[i].y.inches() * 16) / 16);
        EXPECT_LE(furthest(head, fit_fair(points, {}).curve), 1_in / 32) << c.span;
    }
}

// Exceptions. Where the radius changes at once no smooth curve through points 6 in apart knows where: an eyebrow is
// then up to 0.08 in off beside its change, a three-centred head half an inch off between the spring and the first
// station. Closer points bring both back, and the survey says between which stations they are wanted.
TEST(BackFromOrdinates, where_the_radius_changes_at_once_points_must_be_closer) {
    for (const Case& c : {Case{Shape::eyebrow, 80, 14}, Case{Shape::eyebrow, 72, 8}, Case{Shape::eyebrow, 96, 12}}) {
        const auto head = head_points(c);
        EXPECT_LE(furthest(head, fit_fair(stations(head, 6_in), {}).curve), 3_in / 32) << c.span;
        EXPECT_LE(furthest(head, fit_fair(stations(head, 3_in), {}).curve), 1_in / 32) << c.span;
    }
    for (const Case& c : {Case{Shape::three_centred, 72, 24}, Case{Shape::three_centred, 60, 20}}) {
        const auto head = head_points(c);
        const auto apart = stations(head, 6_in);
        EXPECT_GT(furthest(head, fit_fair(apart, {}).curve), 1_in / 4) << c.span;
        job::Ordinates written;
        for (const Point p : apart) written.points.push_back({{p.x, {}}, {p.y, {}}});
        const Survey told = survey(apart, written, {});
        ASSERT_FALSE(told.gaps.empty());
        EXPECT_EQ(told.gaps.front().after, 0U);
        EXPECT_EQ(told.gaps.back().after, apart.size() - 2);
        const auto closer = stations(head, 3_in, {0.25, 0.5, 1, 1.5, 2, 4, 5, 7, 8});
        EXPECT_LE(furthest(head, fit_fair(closer, {}).curve), 1_in / 32) << c.span;
    }
}

// A corner is rounded, and told.
TEST(BackFromOrdinates, a_corner_is_told) {
    for (const Case& c : {Case{Shape::pointed, 60, 40}, Case{Shape::tudor, 60, 20}}) {
        const auto points = stations(head_points(c), 6_in);
        job::Ordinates written;
        for (const Point p : points) written.points.push_back({{p.x, {}}, {p.y, {}}});
        const Survey told = survey(points, written, {});
        const bool at_crown = std::any_of(told.gaps.begin(), told.gaps.end(), [&](const Survey::Gap& gap) {
            return points[gap.after].x <= 0_in && points[gap.after + 1].x >= 0_in;
        });
        EXPECT_TRUE(at_crown) << c.rise;
    }
}

// Without a point, its left-out miss says where the curve of the others runs: against a fit that never saw it.
TEST(BackFromOrdinates, left_out_is_what_the_others_say) {
    const auto points = ordinates(
        72, [](double u) { return 8 * (1 + std::cos(Angle::pi * u)) / 2; }, 25, 1.0 / 32);
    const FairFit all = fit_fair(points, {});
    for (const std::size_t i : {5U, 12U, 18U}) {
        auto others = points;
        others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
        const Curve without = fit_fair(others, {}).curve;
        EXPECT_NEAR(furthest({points[i]}, without).inches(), std::abs(all.left_out.at[i].inches()), 0.02) << i;
    }
    EXPECT_EQ(all.left_out.at.front(), Length());
    EXPECT_EQ(all.left_out.at.back(), Length());
}

}  // namespace
}  // namespace kerfpacket::curve
