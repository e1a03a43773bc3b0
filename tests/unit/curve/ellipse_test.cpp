#include <gtest/gtest.h>

#include "curve/survey.h"
#include "measured_points.h"

namespace kerfpacket::curve {
namespace {

using namespace measure::literals;

TEST(FitEllipse, recovers_the_ellipse_that_was_measured) {
    struct Row {
        double half_width, half_height, from, to;  ///< degrees round the ellipse, from the right
    };
    for (const Row& row : {Row{42, 21, 180, 0}, Row{42, 21, 150, 30}, Row{20, 48, 180, 0}, Row{20, 48, 170, 25},
                           Row{60, 9, 180, 0}, Row{42, 21, 200, -20}}) {
        std::vector<Point> points;
        for (int i = 0; i <= 14; ++i) {
            const double angle = (row.from + (row.to - row.from) * i / 14) * Angle::pi / 180;
            points.push_back(in(3 + row.half_width * std::cos(angle), -2 + row.half_height * std::sin(angle)));
        }
        const auto fit = fit_ellipse(points);
        ASSERT_TRUE(fit) << row.half_width << " " << row.from;
        EXPECT_NEAR(fit->half_width.inches(), row.half_width, 1e-9 * row.half_width) << row.from;
        EXPECT_NEAR(fit->half_height.inches(), row.half_height, 1e-9 * row.half_height) << row.from;
        EXPECT_NEAR(fit->centre.x.inches(), 3, 1e-8);
        EXPECT_NEAR(fit->centre.y.inches(), -2, 1e-8);
        EXPECT_LT(fit->misses.worst(), 1e-9_in);
    }
}

// The misses against the nearest of very many places on the ellipse.
TEST(FitEllipse, misses_are_square_to_the_ellipse) {
    const auto points = ordinates(84, ellipse_height(21.5), 21, 0.25);
    const auto fit = fit_ellipse(points);
    ASSERT_TRUE(fit);
    EXPECT_GT(fit->misses.worst(), 0.1_in);
    for (std::size_t i = 0; i < points.size(); ++i) {
        double nearest = 1e9;
        double outward = 0;
        for (int k = 0; k < 20000; ++k) {
            const Direction d = Direction::at(Angle::degrees(k * 360.0 / 20000));
            const Point off = points[i] - fit->centre - Point{fit->half_width * d.x, fit->half_height * d.y};
            const double away = measure::hypot(off.x, off.y).inches();
            if (away >= nearest) continue;
            nearest = away;
            const Length across = measure::hypot(fit->half_height * d.x, fit->half_width * d.y);
            outward = (off.x * (fit->half_height / across * d.x) + off.y * (fit->half_width / across * d.y)).inches();
        }
        EXPECT_NEAR(fit->misses.at[i].inches(), outward, 1e-5) << i;
    }
}

TEST(FitEllipse, is_least_in_squares_square_to_the_ellipse) {
    const auto points = ordinates(84, ellipse_height(21.5), 31, 1.0 / 16);
    const auto fit = fit_ellipse(points);
    ASSERT_TRUE(fit);
    const auto squares = [](const EllipseFit& e) {
        double sum = 0;
        for (const Length miss : e.misses.at) sum += miss.mm() * miss.mm();
        return sum;
    };
    EXPECT_NEAR(fit->half_width.inches(), 42, 0.1);
    EXPECT_NEAR(fit->half_height.inches(), 21.5, 0.1);
    // The true ellipse is near, but not as good.
    double truly = 0;
    for (const Point p : points) {
        double nearest = 1e9;
        for (int k = 0; k < 20000; ++k) {
            const Direction d = Direction::at(Angle::degrees(k * 360.0 / 20000));
            nearest = std::min(nearest, distance(in(42 * d.x, 21.5 * d.y), p).mm());
        }
        truly += nearest * nearest;
    }
    EXPECT_LT(squares(*fit), truly);
    EXPECT_GT(squares(*fit), 0.5 * truly);
}

TEST(FitEllipse, misses_are_positive_to_the_left_of_travel) {
    auto points = ordinates(84, ellipse_height(21.5), 21);
    points[10].y += 0.5_in;
    const auto fit = fit_ellipse(points);
    ASSERT_TRUE(fit);
    EXPECT_EQ(fit->misses.worst_point(), 10U);
    EXPECT_GT(fit->misses.at[10], 0.2_in);
    for (Point& p : points) p.y = -p.y;
    EXPECT_LT(fit_ellipse(points).value().misses.at[10], -0.2_in);
}

TEST(FitEllipse, none_where_it_degenerates) {
    EXPECT_FALSE(fit_ellipse({in(0, 0), in(1, 1), in(2, 2), in(3, 3), in(4, 4), in(5, 5)}));
    EXPECT_FALSE(fit_ellipse({in(0, 0), in(1, 1), in(2, 1.5), in(3, 1)}));
    // A parabola is an ellipse with its far end at infinity.
    EXPECT_FALSE(fit_ellipse(ordinates(
        72, [](double u) { return 12 * (1 - u * u); }, 15)));
}

}  // namespace
}  // namespace kerfpacket::curve
