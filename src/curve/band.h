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
    /// Right sides, or what solves them: a row an equation, a column each.
    template <int columns = Eigen::Dynamic>
    using Sides = Eigen::Matrix<double, Eigen::Dynamic, columns, Eigen::RowMajor>;

    Band(Eigen::Index size, Eigen::Index reach)
        : size_(size),
          reach_(reach),
          rows_(Sides<>::Zero(size, 3 * reach + 1)),
          pivots_(static_cast<std::size_t>(size)) {}

    void add(Eigen::Index r, Eigen::Index c, double value) { row(r)[c] += value; }

    /// Once, when all is added. The equations must have a solution.
    void factor() {
        for (Eigen::Index k = 0; k < size_; ++k) {
            const Eigen::Index low = last(k, reach_);
            const Eigen::Index wide = last(k, 2 * reach_);
            double* const of_k = row(k);
            Eigen::Index pivot = k;
            for (Eigen::Index r = k + 1; r <= low; ++r)
                if (std::abs(row(r)[k]) > std::abs(row(pivot)[k])) pivot = r;
            pivots_[static_cast<std::size_t>(k)] = pivot;
            if (pivot != k) std::swap_ranges(of_k + k, of_k + wide + 1, row(pivot) + k);
            measure::require(of_k[k] != 0, "equations of a band have a solution");
            for (Eigen::Index r = k + 1; r <= low; ++r) {
                double* const of_r = row(r);
                const double times = of_r[k] /= of_k[k];
                if (times == 0) continue;
                for (Eigen::Index c = k + 1; c <= wide; ++c) of_r[c] -= times * of_k[c];
            }
        }
    }

    /// Fastest where the columns are told by the type.
    template <int columns>
    Sides<columns> solve(Sides<columns> sides) const {
        for (Eigen::Index k = 0; k < size_; ++k) {
            const Eigen::Index pivot = pivots_[static_cast<std::size_t>(k)];
            if (pivot != k) sides.row(k).swap(sides.row(pivot));
            for (Eigen::Index r = k + 1; r <= last(k, reach_); ++r) sides.row(r) -= row(r)[k] * sides.row(k);
        }
        for (Eigen::Index k = size_ - 1; k >= 0; --k) {
            const double* const of_k = row(k);
            for (Eigen::Index c = k + 1; c <= last(k, 2 * reach_); ++c) sides.row(k) -= of_k[c] * sides.row(c);
            sides.row(k) /= of_k[k];
        }
        return sides;
    }

private:
    Eigen::Index last(Eigen::Index k, Eigen::Index reach) const { return std::min(size_ - 1, k + reach); }
    /// Of a row, by the column; only for those that it holds.
    double* row(Eigen::Index r) { return rows_.data() + r * (rows_.cols() - 1) + reach_; }
    const double* row(Eigen::Index r) const { return rows_.data() + r * (rows_.cols() - 1) + reach_; }

    Eigen::Index size_;
    Eigen::Index reach_;
    Sides<> rows_;  ///< row r holds columns r - reach to r + 2 reach: exchanged rows reach so far
    std::vector<Eigen::Index> pivots_;
};

}  // namespace kerfpacket::curve
