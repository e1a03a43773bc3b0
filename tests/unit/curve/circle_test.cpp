#include <gtest/gtest.h>

#include "curve/survey.h"
#include "measured_points.h"

namespace kerfpacket::curve {
namespace {

using namespace measure::literals;

TEST(FitCircle, recovers_the_arc_that_was_measured) {
    for (const double rise : {0.01, 0.5, 11.5, 36.0}) {
        const auto fit = fit_circle(ordinates(72, arc_height(72, rise), 9));
        ASSERT_TRUE(fit);
        const double radius = (72 * 72 + 4 * rise * rise) / (8 * rise);
        EXPECT_NEAR(fit->radius.inches() / radius, 1, 1e-9) << rise;
        EXPECT_NEAR(fit->centre.x.inches(), 0, 1e-9 * radius);
        EXPECT_NEAR(fit->centre.y.inches(), rise - radius, 1e-9 * radius);
        EXPECT_LT(fit->misses.worst(), 1e-9_in);
    }
}

// Where the sum of squares is least, no small move or change of the circle makes it less.
TEST(FitCircle, is_least_in_squares_square_to_the_circle) {
    const auto points = ordinates(72, arc_height(72, 11.5), 25, 0.25);
    const auto fit = fit_circle(points);
    ASSERT_TRUE(fit);
    const auto squares = [&](double dx, double dy, double dr) {
        double sum = 0;
        for (const Point p : points) {
            const double off = distance(p, fit->centre + in(dx, dy)).inches() - fit->radius.inches() - dr;
            sum += off * off;
        }
        return sum;
    };
    const double least = squares(0, 0, 0);
    EXPECT_GT(least, 0.01);
    for (const double step : {-1e-3, 1e-3}) {
        EXPECT_GT(squares(step, 0, 0), least);
        EXPECT_GT(squares(0, step, 0), least);
        EXPECT_GT(squares(0, 0, step), least);
        EXPECT_GT(squares(0, step, -step), least);
    }
    double sum = 0;
    for (const Length miss : fit->misses.at) sum += miss.inches();
    EXPECT_NEAR(sum, 0, 1e-9);
}

TEST(FitCircle, misses_are_positive_to_the_left_of_travel) {
    auto points = ordinates(72, arc_height(72, 11.5), 13);
    points[4].y += 0.5_in;
    const auto up = fit_circle(points);
    ASSERT_TRUE(up);
    EXPECT_EQ(up->misses.worst_point(), 4U);
    EXPECT_GT(up->misses.at[4], 0.3_in);
    // A wall that bulges down, still from left to right: down is to the right of travel.
    for (Point& p : points) p.y = -p.y;
    const auto down = fit_circle(points);
    ASSERT_TRUE(down);
    EXPECT_NEAR(down->misses.at[4].inches(), -up->misses.at[4].inches(), 1e-9);
}

TEST(FitCircle, none_through_points_in_line) {
    EXPECT_FALSE(fit_circle({in(0, 0), in(1, 1), in(2, 2)}));
    EXPECT_FALSE(fit_circle({in(0, 5), in(1, 5), in(2, 5), in(7, 5)}));
    EXPECT_FALSE(fit_circle({in(0, 0), in(1, 0.1), in(2, 0.2), in(3, 0.3), in(70, 7)}));
    EXPECT_FALSE(fit_circle({in(0, 0), in(1, 1)}));
}

TEST(FitCircle, three_points_lie_on_it) {
    const auto fit = fit_circle({in(0, 0), in(30, 8), in(72, 1)});
    ASSERT_TRUE(fit);
    EXPECT_LT(fit->misses.worst(), 1e-10_in);
}

}  // namespace
}  // namespace kerfpacket::curve
