#pragma once
// Linear equations whose coefficients keep near the diagonal.

#include <Eigen/Core>
#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "measure/require.h"

namespace kerfpacket::curve {

/// A square matrix with coefficients up to `reach` places off its diagonal, factored by elimination with rows
/// exchanged. Time in proportion to its size. Source: Golub and Van Loan, Matrix Computations, 4.3 (band elimination
/// with pivoting).
class Band {
public:
    using Sides = Eigen::Matrix<double, Eigen::Dynamic, Eigen::Dynamic, Eigen::RowMajor>;

    Band(Eigen::Index size, Eigen::Index reach)
        : size_(size),
          reach_(reach),
          rows_(Sides::Zero(size, 3 * reach + 1)),
          pivots_(static_cast<std::size_t>(size)) {}

    void add(Eigen::Index row, Eigen::Index column, double value) { at(row, column) += value; }

    /// Once, when all is added. The equations must have a solution.
    void factor() {
        for (Eigen::Index k = 0; k < size_; ++k) {
            const Eigen::Index low = last(k, reach_);
            const Eigen::Index wide = last(k, 2 * reach_);
            Eigen::Index pivot = k;
            for (Eigen::Index r = k + 1; r <= low; ++r)
                if (std::abs(at(r, k)) > std::abs(at(pivot, k))) pivot = r;
            pivots_[static_cast<std::size_t>(k)] = pivot;
            for (Eigen::Index c = k; pivot != k && c <= wide; ++c) std::swap(at(k, c), at(pivot, c));
            measure::require(at(k, k) != 0, "equations of a band have a solution");
            for (Eigen::Index r = k + 1; r <= low; ++r) {
                const double times = at(r, k) /= at(k, k);
                for (Eigen::Index c = k + 1; times != 0 && c <= wide; ++c) at(r, c) -= times * at(k, c);
            }
        }
    }

    /// One column a right side.
    Sides solve(Sides sides) const {
        for (Eigen::Index k = 0; k < size_; ++k) {
            const Eigen::Index pivot = pivots_[static_cast<std::size_t>(k)];
            if (pivot != k) sides.row(k).swap(sides.row(pivot));
            for (Eigen::Index r = k + 1; r <= last(k, reach_); ++r) sides.row(r) -= at(r, k) * sides.row(k);
        }
        for (Eigen::Index k = size_ - 1; k >= 0; --k) {
            for (Eigen::Index c = k + 1; c <= last(k, 2 * reach_); ++c) sides.row(k) -= at(k, c) * sides.row(c);
            sides.row(k) /= at(k, k);
        }
        return sides;
    }

private:
    Eigen::Index last(Eigen::Index k, Eigen::Index reach) const { return std::min(size_ - 1, k + reach); }
    double& at(Eigen::Index r, Eigen::Index c) { return rows_(r, c - r + reach_); }
    double at(Eigen::Index r, Eigen::Index c) const { return rows_(r, c - r + reach_); }

    Eigen::Index size_;
    Eigen::Index reach_;
    Sides rows_;  ///< row r holds columns r - reach to r + 2 reach: exchanged rows reach so far
    std::vector<Eigen::Index> pivots_;
};

}  // namespace kerfpacket::curve
