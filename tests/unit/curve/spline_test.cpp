// The smoothing spline against other ways to the same curve.

#include "curve/spline.h"

#include <gtest/gtest.h>
#include <Eigen/Dense>
#include <boost/math/interpolators/cardinal_cubic_b_spline.hpp>

#include "measured_points.h"

namespace kerfpacket::curve {
namespace {

using namespace measure::literals;
using Ends = Smoother::Ends;

const std::vector<double> knots{0, 90, 210, 260, 400, 520, 700, 730, 900};

std::vector<Point> wavy() {
    std::vector<Point> points;
    for (const double u : knots)
        points.push_back({Length::mm(u + 5 * std::sin(u)), Length::mm(80 * std::sin(u / 250))});
    return points;
}

Eigen::VectorXd coordinates(const std::vector<Point>& points, bool of_x) {
    Eigen::VectorXd values(static_cast<Eigen::Index>(points.size()));
    for (Eigen::Index i = 0; i < values.size(); ++i) {
        const Point p = points[static_cast<std::size_t>(i)];
        values[i] = (of_x ? p.x : p.y).mm();
    }
    return values;
}

const Law flat = [](double u) { return Jet{{Length::mm(u), {}}, {Length::mm(1), {}}, {}}; };

/// 1, u, u^2, u^3 and a cube that begins at each inner knot: every cubic spline is a sum of these.
Eigen::RowVectorXd basis(double u, int derivative) {
    Eigen::RowVectorXd row(static_cast<Eigen::Index>(4 + knots.size() - 2));
    const auto power = [&](double v, int p) {
        const double factors[] = {1, static_cast<double>(p), static_cast<double>(p * (p - 1)),
                                  static_cast<double>(p * (p - 1) * (p - 2))};
        return p < derivative ? 0 : factors[derivative] * std::pow(v, p - derivative);
    };
    // In a unit of 300 mm, so that the numbers stay near one.
    const auto scaled = [&](double v, int p) { return power(v / 300, p) / std::pow(300, derivative); };
    for (int p = 0; p < 4; ++p) row[p] = scaled(u, p);
    for (std::size_t k = 1; k + 1 < knots.size(); ++k)
        row[static_cast<Eigen::Index>(3 + k)] = u > knots[k] ? scaled(u - knots[k], 3) : 0;
    return row;
}

/// The same minimum found densely: of the third derivative off a cubic trend, of the second off a straight one, with
/// the fixed ends by Lagrange's multipliers; values at the knots.
Eigen::VectorXd dense(const Eigen::VectorXd& y, double smoothing, bool cubic_trend,
                      const std::optional<std::array<double, 2>>& slopes) {
    const auto n = static_cast<Eigen::Index>(knots.size());
    const Eigen::Index size = n + 2;
    Eigen::MatrixXd rows(n, size);
    for (Eigen::Index i = 0; i < n; ++i) rows.row(i) = basis(knots[static_cast<std::size_t>(i)], 0);
    Eigen::VectorXd trend = Eigen::VectorXd::Zero(size);
    if (cubic_trend) trend.head<4>() = rows.leftCols<4>().colPivHouseholderQr().solve(y);
    // Simpson's rule is exact for the square of a straight second derivative, and of a third that is even. Just inside
    // the knots.
    const int derivative = cubic_trend ? 3 : 2;
    Eigen::MatrixXd energy = Eigen::MatrixXd::Zero(size, size);
    for (std::size_t k = 0; k + 1 < knots.size(); ++k)
        for (const auto& [part, weight] : {std::pair{1e-12, 1.0}, {0.5, 4.0}, {1 - 1e-12, 1.0}}) {
            const double h = knots[k + 1] - knots[k];
            const Eigen::RowVectorXd bend = basis(knots[k] + h * part, derivative);
            energy += bend.transpose() * bend * (weight * h / 6);
        }
    std::vector<std::pair<Eigen::RowVectorXd, double>> fixed{{rows.row(0), y[0]}, {rows.row(n - 1), y[n - 1]}};
    if (slopes) {
        fixed.emplace_back(basis(knots.front(), 1), (*slopes)[0]);
        fixed.emplace_back(basis(knots.back(), 1), (*slopes)[1]);
    }
    const auto all = size + static_cast<Eigen::Index>(fixed.size());
    Eigen::MatrixXd matrix = Eigen::MatrixXd::Zero(all, all);
    Eigen::VectorXd right = Eigen::VectorXd::Zero(all);
    matrix.topLeftCorner(size, size) = rows.transpose() * rows + smoothing * energy;
    right.head(size) = rows.transpose() * y + smoothing * energy * trend;
    for (Eigen::Index k = size; k < all; ++k) {
        const auto& [row, value] = fixed[static_cast<std::size_t>(k - size)];
        matrix.row(k).head(size) = row;
        matrix.col(k).head(size) = row.transpose();
        right[k] = value;
    }
    const Eigen::VectorXd solution = matrix.fullPivLu().solve(right);
    return rows * solution.head(size);
}

TEST(Spline, smooths_as_a_dense_solution_does) {
    for (const double size : {1e3, 1e6, 1e8})
        for (const bool cubic : {false, true})
            for (const bool clamped : {false, true}) {
                const double smoothing = size * (cubic ? 1e4 : 1);
                const Ends ends = clamped
                                      ? Ends{{Direction::at(Angle::degrees(20)), Direction::at(Angle::degrees(-50))}}
                                      : std::nullopt;
                const Smoother smoother(knots, wavy(), cubic ? Smoother::Trend::cubic : Smoother::Trend::straight,
                                        ends);
                const Spline spline = smoother.smooth(smoothing);
                for (const bool of_x : {true, false}) {
                    std::optional<std::array<double, 2>> slopes;
                    if (ends) slopes = {of_x ? (*ends)[0].x : (*ends)[0].y, of_x ? (*ends)[1].x : (*ends)[1].y};
                    const Eigen::VectorXd expected = dense(coordinates(wavy(), of_x), smoothing, cubic, slopes);
                    EXPECT_LT((coordinates(spline.points, of_x) - expected).cwiseAbs().maxCoeff(), 1e-6)
                        << smoothing << cubic << clamped << of_x;
                }
            }
}

TEST(Spline, without_smoothing_it_is_the_interpolating_spline) {
    const std::vector<double> heights{0, 31, 48, 60, 52, 33, 8};
    std::vector<double> even;
    std::vector<Point> points;
    for (std::size_t i = 0; i < heights.size(); ++i) {
        even.push_back(25.0 * static_cast<double>(i));
        points.push_back({Length::mm(even.back()), Length::mm(heights[i])});
    }
    const Ends ends{{Direction{1, 1.5}, Direction{1, -0.75}}};
    const Spline spline = Smoother(even, points, Smoother::Trend::cubic, ends).smooth(0);
    const boost::math::interpolators::cardinal_cubic_b_spline<double> reference(heights.begin(), heights.end(), 0, 25,
                                                                                1.5, -0.75);
    for (double u = 0; u <= 150; u += 0.7) {
        const Jet jet = spline.at(u);
        EXPECT_NEAR(jet.point.y.mm(), reference(u), 1e-9) << u;
        EXPECT_NEAR(jet.first.y.mm(), reference.prime(u), 1e-9) << u;
        EXPECT_NEAR(jet.second.y.mm(), reference.double_prime(u), 1e-9) << u;
        EXPECT_NEAR(jet.point.x.mm(), u, 1e-9) << u;
    }
}

TEST(Spline, a_cubic_stays_itself_however_smooth) {
    const auto cubic = [](double u) { return Length::mm(1e-6 * u * (u - 300) * (u - 900)); };
    std::vector<Point> points;
    for (const double u : knots) points.push_back({Length::mm(u), cubic(u)});
    const Smoother smoother(knots, points, Smoother::Trend::cubic, {});
    const auto [least, most] = smoother.range();
    for (const double smoothing : {0.0, least, std::sqrt(least * most), most})
        for (double u = 0; u <= 900; u += 13)
            EXPECT_NEAR(smoother.smooth(smoothing).at(u).point.y.mm(), cubic(u).mm(), 1e-8) << smoothing;
}

// Were the point where the others put it, the spline would pass through it: then it says nothing of its own.
TEST(Spline, left_out_is_what_the_others_leave) {
    for (const double smoothing : {0.0, 1e8, 1e12}) {
        const std::vector<Point> left_out = Smoother(knots, wavy(), flat, {}).validated(smoothing).left_out;
        EXPECT_EQ(left_out.front(), Point());
        EXPECT_EQ(left_out.back(), Point());
        for (std::size_t i = 1; i + 1 < knots.size(); ++i) {
            std::vector<Point> moved = wavy();
            moved[i] = moved[i] - left_out[i];
            EXPECT_GT(distance(left_out[i], {}), 0.01_mm);
            const Smoother others(knots, moved, flat, {});
            EXPECT_LT(distance(others.smooth(smoothing).points[i], moved[i]), 1e-6_mm) << smoothing << " " << i;
            EXPECT_LT(distance(others.validated(smoothing).left_out[i], {}), 1e-6_mm) << smoothing << " " << i;
        }
    }
}

TEST(Spline, a_law_that_fits_stays_itself) {
    const Law circle = [](double u) {
        const double s = std::sin(u / 500);
        const double c = std::cos(u / 500);
        return Jet{{Length::mm(500 * s), Length::mm(500 * c)},
                   {Length::mm(c), Length::mm(-s)},
                   {Length::mm(-s / 500), Length::mm(-c / 500)}};
    };
    std::vector<Point> points;
    for (const double u : knots) points.push_back(circle(u).point);
    const Spline spline = Smoother(knots, points, circle, {}).smooth(1e6);
    for (double u = 0; u <= 900; u += 13) EXPECT_LT(distance(spline.at(u).point, circle(u).point), 1e-8_mm) << u;
}

TEST(Spline, goes_on_straight) {
    const Spline spline = Smoother(knots, wavy(), Smoother::Trend::cubic, {}).smooth(1e5);
    for (const double end : {knots.front(), knots.back()}) {
        const double beyond = end == knots.front() ? end - 40 : end + 40;
        const Jet at = spline.at(end);
        const Jet there = spline.at(beyond);
        EXPECT_NEAR(there.point.x.mm(), (at.point + at.first * (beyond - end)).x.mm(), 1e-9);
        EXPECT_NEAR(there.point.y.mm(), (at.point + at.first * (beyond - end)).y.mm(), 1e-9);
        EXPECT_EQ(there.second, Point());
        EXPECT_NE(at.second, Point());
    }
}

}  // namespace
}  // namespace kerfpacket::curve
