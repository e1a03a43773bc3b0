#include "curve/least_squares.h"

#include <Eigen/Cholesky>
#include <Eigen/Eigenvalues>
#include <Eigen/QR>
#include <algorithm>
#include <utility>

namespace kerfpacket::curve {

Solution least_squares(const Eigen::VectorXd& start,
                       const std::function<Residuals(const Eigen::VectorXd& unknowns)>& residuals) {
    constexpr int most_steps = 200;
    constexpr double least_step = 1e-13;
    Solution best{start, false};
    Residuals now = residuals(best.unknowns);
    double damping = 1e-4;
    Eigen::MatrixXd normal;
    Eigen::VectorXd downhill, by, there;
    Eigen::LDLT<Eigen::MatrixXd> factored;
    for (int step = 0; step < most_steps; ++step) {
        normal.noalias() = now.slopes.transpose() * now.slopes;
        downhill = -(now.slopes.transpose() * now.values);
        // A direction that nothing depends on still needs damping.
        const double floor = 1e-12 * normal.diagonal().maxCoeff();
        normal.diagonal() += damping * normal.diagonal().cwiseMax(floor);
        by = factored.compute(normal).solve(downhill);
        there = best.unknowns + by;
        if (!there.allFinite()) break;
        const bool small = by.norm() <= least_step * (1 + best.unknowns.norm());
        Residuals next = residuals(there);
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

Eigen::MatrixXd linear_least_squares(const Eigen::MatrixXd& rows, const Eigen::MatrixXd& right) {
    return rows.colPivHouseholderQr().solve(right);
}

Eigen::VectorXd least_eigenvector(const Eigen::MatrixXd& symmetric) {
    return Eigen::SelfAdjointEigenSolver<Eigen::MatrixXd>(symmetric).eigenvectors().col(0);
}

}  // namespace kerfpacket::curve
