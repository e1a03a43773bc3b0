#pragma once
// Nonlinear least squares in a few unknowns: Levenberg-Marquardt.

#include <Eigen/Dense>
#include <algorithm>
#include <utility>

namespace kerfpacket::curve {

/// Residuals at some values of the unknowns, and their derivatives: one row a residual.
template <int n>
struct Residuals {
    Eigen::VectorXd values;
    Eigen::Matrix<double, Eigen::Dynamic, n> slopes;
    double sum() const { return values.squaredNorm(); }
};

template <int n>
struct Solution {
    Eigen::Matrix<double, n, 1> unknowns;
    bool converged = false;
};

/// From `start` downhill to where the sum of squares is least. `residuals(unknowns)` gives Residuals<n>. Unknowns
/// should be of the order of one. Method: Levenberg 1944, Marquardt 1963, with the damping on the diagonal.
template <int n, class Function>
Solution<n> least_squares(const Eigen::Matrix<double, n, 1>& start, const Function& residuals) {
    constexpr int most_steps = 200;
    constexpr double least_step = 1e-13;
    Solution<n> best{start, false};
    Residuals<n> now = residuals(best.unknowns);
    double damping = 1e-4;
    for (int step = 0; step < most_steps; ++step) {
        Eigen::Matrix<double, n, n> normal = now.slopes.transpose() * now.slopes;
        const Eigen::Matrix<double, n, 1> downhill = -(now.slopes.transpose() * now.values);
        // A direction that nothing depends on still needs damping.
        const double floor = 1e-12 * normal.diagonal().maxCoeff();
        normal.diagonal() += damping * normal.diagonal().cwiseMax(floor);
        const Eigen::Matrix<double, n, 1> by = normal.ldlt().solve(downhill);
        const Eigen::Matrix<double, n, 1> there = best.unknowns + by;
        if (!there.allFinite()) break;
        const bool small = by.norm() <= least_step * (1 + best.unknowns.norm());
        Residuals<n> next = residuals(there);
        if (next.values.allFinite() && next.sum() <= now.sum()) {
            best.unknowns = there;
            now = std::move(next);
            damping = std::max(damping * 0.1, 1e-14);
        } else {
            damping = std::max(damping, 1e-10) * 10;
        }
        if (small) {
            best.converged = true;
            break;
        }
    }
    return best;
}

}  // namespace kerfpacket::curve
