#pragma once
// The solvers that the fits and the smooth curve share. Their templates are long to compile: they stand in one file,
// and for any number of unknowns.

#include <Eigen/Core>
#include <functional>

namespace kerfpacket::curve {

/// Residuals at some values of the unknowns, and their derivatives: one row a residual, one column an unknown.
struct Residuals {
    Eigen::VectorXd values;
    Eigen::MatrixXd slopes;
    double sum() const { return values.squaredNorm(); }
};

struct Solution {
    Eigen::VectorXd unknowns;
    bool converged = false;
};

/// Nonlinear least squares in a few unknowns, which should be of the order of one: from `start` downhill to where the
/// sum of squares is least. Method: Levenberg 1944, Marquardt 1963, with the damping on the diagonal.
Solution least_squares(const Eigen::VectorXd& start,
                       const std::function<Residuals(const Eigen::VectorXd& unknowns)>& residuals);

/// The unknowns for which rows * unknowns misses `right` by the least sum of squares; a column for each of its columns.
Eigen::MatrixXd linear_least_squares(const Eigen::MatrixXd& rows, const Eigen::MatrixXd& right);

/// Of length 1, of the least eigenvalue of a symmetric matrix.
Eigen::VectorXd least_eigenvector(const Eigen::MatrixXd& symmetric);

}  // namespace kerfpacket::curve
