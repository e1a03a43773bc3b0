#include <gtest/gtest.h>

#include "curve/survey.h"
#include "measured_points.h"

namespace kerfpacket::curve {
namespace {

using namespace measure::literals;

const Height eyebrow = [](double u) { return 8 * (1 + std::cos(Angle::pi * u)) / 2; };

/// Greatest difference in curvature from place to place along a curve, summed: how unsteadily it bends.
double unsteadiness(const Curve& curve) {
    double sum = 0;
    constexpr int places = 400;
    for (int i = 1; i < places; ++i) {
        const auto bend = [&](int k) { return curve.at(curve.length() * (k / double{places})).curvature; };
        sum += std::abs(bend(i + 1 == places ? i : i + 1) - bend(i));
    }
    return sum;
}

TEST(FitFair, every_point_misses_by_at_most_the_tape_and_no_more_than_it_scatters) {
    for (const unsigned seed : {1U, 2U, 3U}) {
        EXPECT_LE(fit_fair(ordinates(72, eyebrow, 30, 1.0 / 16, seed), {}).misses.worst(), 1_in / 16);
        EXPECT_LE(fit_fair(ordinates(72, eyebrow, 30, 1.0 / 64, seed), {}).misses.worst(), 1_in / 48);
        Fairness fine;
        fine.miss = 1_in / 64;
        EXPECT_LE(fit_fair(ordinates(72, eyebrow, 30, 1.0 / 16, seed), fine).misses.worst(), 1.001_in / 64);
    }
    EXPECT_LE(fit_fair(ordinates(72, eyebrow, 30), {}).misses.worst(), 0.001_in);
}

// Against the nearest of very many places on the curve itself.
TEST(FitFair, misses_are_square_to_the_curve) {
    const auto points = ordinates(72, eyebrow, 20, 1.0 / 16);
    const FairFit fit = fit_fair(points, {});
    std::vector<Spot> spots;
    constexpr int places = 20000;
    for (int k = 0; k <= places; ++k) spots.push_back(fit.curve.at(fit.curve.length() * (k / double{places})));
    for (std::size_t i = 0; i < points.size(); ++i) {
        const auto nearer = [&](const Spot& a, const Spot& b) {
            return distance(a.point, points[i]) < distance(b.point, points[i]);
        };
        const Spot nearest = *std::min_element(spots.begin(), spots.end(), nearer);
        const Point off = points[i] - nearest.point;
        const Direction left = nearest.direction.left();
        EXPECT_NEAR(fit.misses.at[i].inches(), (off.x * left.x + off.y * left.y).inches(), 1e-5) << i;
    }
}

TEST(FitFair, keeps_the_first_and_the_last_point) {
    const auto points = ordinates(72, eyebrow, 20, 1.0 / 16);
    const FairFit fit = fit_fair(points, {});
    EXPECT_LT(distance(fit.curve.at({}).point, points.front()), 1e-9_in);
    EXPECT_LT(distance(fit.curve.at(fit.curve.length()).point, points.back()), 1e-9_in);
    EXPECT_LT(measure::abs(fit.misses.at.front()), 1e-9_in);
    EXPECT_LT(measure::abs(fit.misses.at.back()), 1e-9_in);
}

TEST(FitFair, the_more_it_may_miss_the_more_steadily_it_bends) {
    const auto points = ordinates(72, eyebrow, 30, 1.0 / 16);
    double before = 1e9;
    for (const double miss : {1e-4, 1.0 / 64, 1.0 / 24}) {
        Fairness fairness;
        fairness.miss = Length::inches(miss);
        const double now = unsteadiness(fit_fair(points, fairness).curve);
        EXPECT_LT(now, before) << miss;
        before = now;
    }
}

// An arc measured well bends as an arc, at its ends too.
TEST(FitFair, follows_an_arc) {
    const double radius = (72 * 72 + 4 * 11.5 * 11.5) / (8 * 11.5);
    for (const double noise : {0.0, 1.0 / 64}) {
        const Curve curve = fit_fair(ordinates(72, arc_height(72, 11.5), 25, noise), {}).curve;
        EXPECT_NEAR(curve.length().inches(), 76.825, 0.03);
        for (const double part : {0.001, 0.25, 0.5, 0.75, 0.999}) {
            const double bend = curve.at(curve.length() * part).curvature * 25.4;
            EXPECT_NEAR(bend * radius, -1, 0.15) << noise << " at " << part;
        }
    }
}

TEST(FitFair, end_angles_are_kept) {
    const auto points = ordinates(72, eyebrow, 20, 1.0 / 32);
    Fairness fairness;
    fairness.end_angles = {Angle::degrees(12), Angle::degrees(-3)};
    const FairFit fit = fit_fair(points, fairness);
    EXPECT_NEAR(fit.curve.at({}).direction.angle().degrees(), 12, 1e-9);
    EXPECT_NEAR(fit.curve.at(fit.curve.length()).direction.angle().degrees(), -3, 1e-9);
    EXPECT_LE(fit.misses.worst(), 1_in / 16);
}

TEST(FitFair, a_bump_too_sharp_for_the_board_is_smoothed_and_listed) {
    auto points = ordinates(72, arc_height(72, 11.5), 37);
    points[18].y += 1_in / 2;
    const FairFit sharp = fit_fair(points, {});
    EXPECT_GT(sharp.curve.sharpest_right({}, sharp.curve.length()).curvature, 1 / (30 * 25.4));
    Fairness fairness;
    fairness.least_radius = 30_in;
    const FairFit fit = fit_fair(points, fairness);
    EXPECT_LE(fit.curve.sharpest_right({}, fit.curve.length()).curvature, 1.001 / (30 * 25.4));
    EXPECT_LE(fit.curve.sharpest_left({}, fit.curve.length()).curvature, 1.001 / (30 * 25.4));
    EXPECT_EQ(fit.misses.worst_point(), 18U);
    EXPECT_GT(fit.misses.at[18], 1_in / 8);
    EXPECT_LT(fit.misses.worst(), 1_in / 2);
}

TEST(FitFair, a_curve_sharper_than_the_board_is_flattened_as_far_as_needed) {
    Fairness fairness;
    fairness.least_radius = 40_in;
    const FairFit fit = fit_fair(ordinates(72, arc_height(72, 36), 25), fairness);
    EXPECT_NEAR(1 / fit.curve.sharpest_right({}, fit.curve.length()).curvature / 25.4, 40, 0.1);
    EXPECT_GT(fit.misses.worst(), 5_in);
}

TEST(FitFair, mirrored_and_turned_points_give_the_mirrored_and_turned_curve) {
    const auto points = ordinates(72, eyebrow, 25, 1.0 / 16);
    auto mirrored = points;
    auto turned = points;
    for (Point& p : mirrored) p.y = -p.y;
    for (Point& p : turned) p = geom::turned(p, Angle::degrees(31));
    const FairFit fit = fit_fair(points, {});
    const FairFit down = fit_fair(mirrored, {});
    const FairFit round = fit_fair(turned, {});
    EXPECT_NEAR(fit.curve.length().inches(), down.curve.length().inches(), 1e-6);
    EXPECT_NEAR(fit.curve.length().inches(), round.curve.length().inches(), 1e-6);
    for (std::size_t i = 0; i < points.size(); ++i) {
        EXPECT_NEAR(fit.misses.at[i].inches(), -down.misses.at[i].inches(), 1e-6);
        EXPECT_NEAR(fit.misses.at[i].inches(), round.misses.at[i].inches(), 1e-6);
    }
}

TEST(FitFair, three_points_and_uneven_stations) {
    const std::vector<Point> three{in(0, 0), in(20, 6), in(72, 0)};
    EXPECT_LT(fit_fair(three, {}).misses.worst(), 1e-9_in);
    const std::vector<Point> uneven{in(0, 0), in(0.25, 0.3), in(20, 9), in(20.125, 9), in(60, 7.5), in(72, 0)};
    EXPECT_LE(fit_fair(uneven, {}).misses.worst(), 1_in / 16);
}

}  // namespace
}  // namespace kerfpacket::curve
