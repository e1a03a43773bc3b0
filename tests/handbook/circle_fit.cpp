// Least squares through points, against the worked example of Gander, Golub and Strebel.

#include <gtest/gtest.h>
#include <Eigen/QR>

#include "curve/survey.h"

namespace kerfpacket {
namespace {

using measure::Length;

// Gander, Golub, Strebel, Least-squares fitting of circles and ellipses, BIT 34 (1994) 558-578: points and result from
// memory; the result was computed anew for this project.
const std::vector<std::array<double, 2>> example{{1, 7}, {2, 6}, {5, 8}, {7, 7}, {9, 5}, {3, 7}};

std::vector<geom::Point> example_points() {
    std::vector<geom::Point> points;
    for (const auto& [x, y] : example) points.push_back({Length::inches(x), Length::inches(y)});
    return points;
}

TEST(CircleFit, geometric_fit_of_gander_golub_strebel) {
    const auto fit = curve::fit_circle(example_points());
    ASSERT_TRUE(fit);
    EXPECT_NEAR(fit->centre.x.inches(), 4.7398, 5e-5);
    EXPECT_NEAR(fit->centre.y.inches(), 2.9835, 5e-5);
    EXPECT_NEAR(fit->radius.inches(), 4.7142, 5e-5);
}

// The algebraic fit of x^2 + y^2 + b x + c y + d is simpler, and not what a carpenter would call near.
TEST(CircleFit, is_not_the_algebraic_fit) {
    Eigen::MatrixX3d rows(6, 3);
    Eigen::VectorXd right(6);
    for (Eigen::Index i = 0; i < 6; ++i) {
        const auto& [x, y] = example[static_cast<std::size_t>(i)];
        rows.row(i) << x, y, 1;
        right[i] = -x * x - y * y;
    }
    const Eigen::Vector3d v = rows.colPivHouseholderQr().solve(right);
    const double radius = std::sqrt(v[0] * v[0] / 4 + v[1] * v[1] / 4 - v[2]);
    EXPECT_NEAR(radius, 4.1088, 5e-5);
    EXPECT_GT(curve::fit_circle(example_points()).value().radius.inches(), radius + 0.5);
}

}  // namespace
}  // namespace kerfpacket
