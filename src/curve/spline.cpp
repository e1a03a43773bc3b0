#include "curve/spline.h"

#include <Eigen/QR>
#include <Eigen/SparseCholesky>
#include <algorithm>
#include <cmath>

#include "measure/require.h"

namespace kerfpacket::curve {
namespace {

using Sparse = Eigen::SparseMatrix<double>;
using Entry = Eigen::Triplet<double>;
/// One row a knot or an equation; x and y, mm.
using Rows = Eigen::MatrixX2d;

std::size_t index(Eigen::Index i) { return static_cast<std::size_t>(i); }
Eigen::RowVector2d row(Point p) { return {p.x.mm(), p.y.mm()}; }
Point point(const Rows& rows, Eigen::Index i) { return {Length::mm(rows(i, 0)), Length::mm(rows(i, 1))}; }

}  // namespace

Jet Spline::at(double u) const {
    const auto next =
        std::partition_point(std::next(knots.begin()), std::prev(knots.end()), [&](double knot) { return knot <= u; });
    return at(static_cast<std::size_t>(next - knots.begin()) - 1, u);
}

Jet Spline::at(std::size_t i, double u) const {
    const bool before = i == 0 && u < knots.front();
    const bool past = i + 2 == knots.size() && u > knots.back();
    if (before || past) {
        const double end = before ? knots.front() : knots.back();
        Jet jet = at(i, end);
        jet.point = jet.point + jet.first * (u - end);
        jet.second = {};
        return jet;
    }
    const double h = knots[i + 1] - knots[i];
    const double b = (u - knots[i]) / h;
    const double a = 1 - b;
    const Point& s = seconds[i];
    const Point& t = seconds[i + 1];
    return {points[i] * a + points[i + 1] * b + (s * (a * a * a - a) + t * (b * b * b - b)) * (h * h / 6),
            (points[i + 1] - points[i]) * (1 / h) + (t * (3 * b * b - 1) - s * (3 * a * a - 1)) * (h / 6),
            s * a + t * b};
}

/// With s the second derivatives of the spline less those of the trend, and f its points less the trend's, the spline
/// is smooth where gram * s = differences * f + ends. Least is then reached where (gram + smoothing * differences *
/// free * differences^T) s = differences * off + ends, and f = off - smoothing * free * differences^T * s.
struct Smoother::Equations {
    std::vector<double> knots;
    Rows trend;          ///< points of the trend at the knots
    Rows trend_seconds;  ///< and its second derivatives
    Rows off;            ///< what the points stand off the trend
    Rows right;          ///< differences * off + ends
    bool clamped = false;
    Sparse gram;
    Sparse differences;
    Sparse stiffness;      ///< differences * free * differences^T
    Eigen::VectorXd free;  ///< 1 for a point that may be missed, 0 for the ends

    Eigen::Index count() const { return static_cast<Eigen::Index>(knots.size()); }
    double gap(Eigen::Index i) const { return knots[index(i + 1)] - knots[index(i)]; }

    Rows set_trend(const Rows& points, Trend kind);
    void set_equations();
};

/// Least squares in powers of the parameter, scaled to -1 .. 1; gives its slopes at both ends.
Rows Smoother::Equations::set_trend(const Rows& points, Trend kind) {
    const Eigen::Index n = count();
    const Eigen::Index powers = kind == Trend::straight ? 2 : std::min<Eigen::Index>(4, n);
    const double middle = (knots.front() + knots.back()) / 2;
    const double half = (knots.back() - knots.front()) / 2;
    Eigen::MatrixXd values = Eigen::MatrixXd::Zero(n, powers);
    Eigen::MatrixXd seconds = values;
    Eigen::MatrixXd slopes = Eigen::MatrixXd::Zero(2, powers);
    for (Eigen::Index j = 0; j < powers; ++j) {
        const auto p = static_cast<double>(j);
        for (Eigen::Index i = 0; i < n; ++i) {
            const double u = (knots[index(i)] - middle) / half;
            values(i, j) = std::pow(u, p);
            if (j >= 2) seconds(i, j) = p * (p - 1) * std::pow(u, p - 2) / (half * half);
        }
        slopes(0, j) = j % 2 == 0 ? -p / half : p / half;
        slopes(1, j) = p / half;
    }
    const Eigen::MatrixXd coefficients = values.householderQr().solve(points);
    trend = values * coefficients;
    trend_seconds = seconds * coefficients;
    return slopes * coefficients;
}

/// One equation a knot; none at ends that are free, where the second derivative is the trend's.
void Smoother::Equations::set_equations() {
    const Eigen::Index n = count();
    const Eigen::Index first = clamped ? 0 : 1;
    const Eigen::Index size = clamped ? n : n - 2;
    std::vector<Entry> of_gram;
    std::vector<Entry> of_differences;
    const auto add = [](std::vector<Entry>& to, Eigen::Index r, Eigen::Index c, double value) {
        to.emplace_back(static_cast<int>(r), static_cast<int>(c), value);
    };
    for (Eigen::Index r = 0; r < size; ++r) {
        const Eigen::Index i = r + first;
        for (const Eigen::Index gap_at : {i - 1, i}) {
            if (gap_at < 0 || gap_at + 1 >= n) continue;
            const double h = gap(gap_at);
            const Eigen::Index other = gap_at == i ? i + 1 : i - 1;
            add(of_differences, r, i, -1 / h);
            add(of_differences, r, other, 1 / h);
            add(of_gram, r, r, h / 3);
            if (other >= first && other < first + size) add(of_gram, r, other - first, h / 6);
        }
    }
    gram = Sparse(size, size);
    gram.setFromTriplets(of_gram.begin(), of_gram.end());
    differences = Sparse(size, n);
    differences.setFromTriplets(of_differences.begin(), of_differences.end());
    stiffness = differences * free.asDiagonal() * Sparse(differences.transpose());
}

Smoother::Smoother(std::vector<double> knots, const std::vector<Point>& points, Trend trend,
                   const std::optional<std::array<Direction, 2>>& ends)
    : equations_(std::make_unique<Equations>()) {
    measure::require(points.size() >= 3 && points.size() == knots.size(), "a smooth curve has three points");
    Equations& e = *equations_;
    e.knots = std::move(knots);
    e.clamped = ends.has_value();
    Rows measured(e.count(), 2);
    for (Eigen::Index i = 0; i < e.count(); ++i) measured.row(i) = row(points[index(i)]);
    const Rows slopes = e.set_trend(measured, trend);
    e.off = measured - e.trend;
    e.free = Eigen::VectorXd::Ones(e.count());
    e.free[0] = 0;
    e.free[e.count() - 1] = 0;
    e.set_equations();
    e.right = e.differences * e.off;
    if (ends) {
        e.right.row(0) -= Eigen::RowVector2d(ends->front().x, ends->front().y) - slopes.row(0);
        e.right.row(e.right.rows() - 1) += Eigen::RowVector2d(ends->back().x, ends->back().y) - slopes.row(1);
    }
}

Smoother::~Smoother() = default;

Spline Smoother::smooth(double smoothing) const {
    const Equations& e = *equations_;
    Eigen::SimplicialLDLT<Sparse, Eigen::Lower, Eigen::NaturalOrdering<int>> solver;
    solver.compute(e.gram + smoothing * e.stiffness);
    measure::require(solver.info() == Eigen::Success, "a smooth curve can be solved for");
    const Rows bends = solver.solve(e.right);
    const Rows points = e.trend + e.off - smoothing * (e.free.asDiagonal() * Rows(e.differences.transpose() * bends));
    Rows seconds = e.trend_seconds;
    seconds.middleRows(e.clamped ? 0 : 1, bends.rows()) += bends;
    Spline spline{e.knots, {}, {}};
    for (Eigen::Index i = 0; i < e.count(); ++i) {
        spline.points.push_back(point(points, i));
        spline.seconds.push_back(point(seconds, i));
    }
    return spline;
}

std::array<double, 2> Smoother::range() const {
    const Equations& e = *equations_;
    const double whole = e.knots.back() - e.knots.front();
    double least = whole;
    for (Eigen::Index i = 0; i + 1 < e.count(); ++i) least = std::min(least, e.gap(i));
    // The smoothing works over a length of about (smoothing * gap)^(1/4).
    const double mean = whole / static_cast<double>(e.count() - 1);
    return {1e-9 * least * least * least, 100 * std::pow(whole, 4) / mean};
}

}  // namespace kerfpacket::curve
