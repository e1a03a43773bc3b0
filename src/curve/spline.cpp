#include "curve/spline.h"

#include <Eigen/SparseCore>
#include <algorithm>
#include <array>
#include <cmath>

#include "curve/band.h"
#include "curve/least_squares.h"
#include "measure/require.h"

namespace kerfpacket::curve {
namespace {

using Sparse = Eigen::SparseMatrix<double>;
using Entry = Eigen::Triplet<double>;
/// One row a knot or an equation.
template <int columns>
using Columns = Eigen::Matrix<double, Eigen::Dynamic, columns>;
/// x and y, mm.
using Rows = Columns<2>;

std::size_t index(Eigen::Index i) { return static_cast<std::size_t>(i); }
Eigen::RowVector2d row(Point p) { return {p.x.mm(), p.y.mm()}; }
template <typename Two>
Point point(const Two& rows, Eigen::Index i) {
    return {Length::mm(rows(i, 0)), Length::mm(rows(i, 1))};
}

constexpr std::size_t most_powers = 4;

/// Least squares in powers of the parameter, at most `most_powers`, scaled to -1 .. 1.
Law polynomial(const std::vector<double>& knots, const std::vector<Point>& points, Eigen::Index powers) {
    const auto n = static_cast<Eigen::Index>(knots.size());
    const double middle = (knots.front() + knots.back()) / 2;
    const double half = (knots.back() - knots.front()) / 2;
    Eigen::MatrixXd values(n, powers);
    Rows measured(n, 2);
    for (Eigen::Index i = 0; i < n; ++i) {
        measured.row(i) = row(points[index(i)]);
        for (Eigen::Index j = 0; j < powers; ++j)
            values(i, j) = std::pow((knots[index(i)] - middle) / half, static_cast<double>(j));
    }
    const Rows solved = linear_least_squares(values, measured);
    // Asked for at every place of a curve: nothing is allocated there.
    std::array<Point, most_powers> c{};
    for (Eigen::Index j = 0; j < powers; ++j) c.at(index(j)) = point(solved, j);
    return [c, middle, half](double u) {
        const double v = (u - middle) / half;
        Jet jet;
        for (auto power = c.rbegin(); power != c.rend(); ++power) {
            jet.second = jet.second * v + jet.first * 2;
            jet.first = jet.first * v + jet.point;
            jet.point = jet.point * v + *power;
        }
        jet.first = jet.first * (1 / half);
        jet.second = jet.second * (1 / (half * half));
        return jet;
    };
}

void add(std::vector<Entry>& to, Eigen::Index r, Eigen::Index c, double value) {
    to.emplace_back(static_cast<int>(r), static_cast<int>(c), value);
}

Sparse made_of(const std::vector<Entry>& entries, Eigen::Index rows, Eigen::Index columns) {
    Sparse made(rows, columns);
    made.setFromTriplets(entries.begin(), entries.end());
    return made;
}

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
    const Jet on = trend(u);
    return {on.point + offs[i] * a + offs[i + 1] * b + (s * (a * a * a - a) + t * (b * b * b - b)) * (h * h / 6),
            on.first + (offs[i + 1] - offs[i]) * (1 / h) + (t * (3 * b * b - 1) - s * (3 * a * a - 1)) * (h / 6),
            on.second + s * a + t * b};
}

/// With s the second derivatives of what is added to the trend, and f its points, it is smooth where
/// joins * s = differences * f + ends. Of such s that one is looked for whose s^T * bending * s is least. With
/// multipliers m this is where
///     bending * s = joins^T * m,    joins * s + smoothing * stiffness * m = differences * off + ends,
/// and f = off - smoothing * free * differences^T * m.
struct Smoother::Equations {
    std::vector<double> knots;
    Law trend;
    bool straight = false;
    bool clamped = false;
    Rows points;
    Rows off;    ///< what the points stand off the trend
    Rows right;  ///< differences * off + ends
    Sparse joins;
    Sparse bending;
    Sparse differences;
    Sparse across;         ///< differences^T
    Sparse stiffness;      ///< differences * free * differences^T
    Eigen::VectorXd free;  ///< 1 for a point that may be missed, 0 for the ends
    std::optional<Band> unsmoothed;

    Eigen::Index count() const { return static_cast<Eigen::Index>(knots.size()); }
    double gap(Eigen::Index i) const { return knots[index(i + 1)] - knots[index(i)]; }
    /// Among the unknowns s and m of a knot stand side by side, so that the equations keep to a band.
    Eigen::Index second(Eigen::Index knot) const { return clamped || knot == 0 ? 2 * knot : 2 * knot - 1; }
    Eigen::Index multiplier(Eigen::Index equation) const { return 2 * equation + (clamped ? 1 : 2); }

    void set(const std::vector<Point>& measured, const Ends& ends);
    void set_joins();
    void set_bending();
    void set_unsmoothed();
    Band factored(double smoothing) const;
    /// Second derivatives and multipliers, a column for each of the right sides of the joins.
    template <int columns>
    Band::Sides<columns> unknowns(const Band& band, const Columns<columns>& rights) const;
    /// differences^T * m.
    template <int columns>
    Columns<columns> pull(const Band::Sides<columns>& unknowns) const;

    /// Of the points as they are.
    struct Solved {
        double smoothing = 0;
        Band band;
        Band::Sides<2> unknowns;
        Rows pulled;
    };
    Solved solved(double smoothing) const;
    Spline spline(const Solved& solved) const;
    std::vector<Point> left_out(const Solved& solved) const;
};

/// One equation a knot; none at ends that are free.
void Smoother::Equations::set_joins() {
    const Eigen::Index n = count();
    const Eigen::Index size = clamped ? n : n - 2;
    std::vector<Entry> of_joins;
    std::vector<Entry> of_differences;
    for (Eigen::Index r = 0; r < size; ++r) {
        const Eigen::Index i = clamped ? r : r + 1;
        for (const Eigen::Index gap_at : {i - 1, i}) {
            if (gap_at < 0 || gap_at + 1 >= n) continue;
            const double h = gap(gap_at);
            const Eigen::Index other = gap_at == i ? i + 1 : i - 1;
            add(of_differences, r, i, -1 / h);
            add(of_differences, r, other, 1 / h);
            add(of_joins, r, i, h / 3);
            add(of_joins, r, other, h / 6);
        }
    }
    joins = made_of(of_joins, size, n);
    differences = made_of(of_differences, size, n);
    across = differences.transpose();
    stiffness = differences * free.asDiagonal() * across;
}

/// The integral over a gap of the square of a second derivative that is straight there, or of its slope.
void Smoother::Equations::set_bending() {
    std::vector<Entry> entries;
    for (Eigen::Index i = 0; i + 1 < count(); ++i) {
        const double h = gap(i);
        for (const Eigen::Index k : {i, i + 1}) {
            add(entries, k, k, straight ? h / 3 : 1 / h);
            add(entries, k, 2 * i + 1 - k, straight ? h / 6 : -1 / h);
        }
    }
    bending = made_of(entries, count(), count());
}

void Smoother::Equations::set(const std::vector<Point>& measured, const Ends& ends) {
    measure::require(measured.size() >= 3 && measured.size() == knots.size(), "a smooth curve has three points");
    points = Rows(count(), 2);
    off = Rows(count(), 2);
    for (Eigen::Index i = 0; i < count(); ++i) {
        points.row(i) = row(measured[index(i)]);
        off.row(i) = points.row(i) - row(trend(knots[index(i)]).point);
    }
    clamped = ends.has_value();
    free = Eigen::VectorXd::Ones(count());
    free[0] = 0;
    free[count() - 1] = 0;
    set_joins();
    set_bending();
    set_unsmoothed();
    right = differences * off;
    if (!ends) return;
    const auto off_trend = [&](Direction end, double knot) -> Eigen::RowVector2d {
        return Eigen::RowVector2d(end.x, end.y) - row(trend(knot).first);
    };
    right.row(0) -= off_trend(ends->front(), knots.front());
    right.row(right.rows() - 1) += off_trend(ends->back(), knots.back());
}

namespace {

/// Row, column and value of all that is not nothing.
template <typename Take>
void each(const Sparse& matrix, const Take& take) {
    for (int k = 0; k < matrix.outerSize(); ++k)
        for (Sparse::InnerIterator it(matrix, k); it; ++it) take(it.row(), it.col(), it.value());
}

}  // namespace

void Smoother::Equations::set_unsmoothed() {
    constexpr Eigen::Index reach = 4;
    Band& band = unsmoothed.emplace(count() + joins.rows(), reach);
    each(bending, [&](Eigen::Index r, Eigen::Index c, double v) { band.add(second(r), second(c), v); });
    each(joins, [&](Eigen::Index r, Eigen::Index c, double v) {
        band.add(second(c), multiplier(r), -v);
        band.add(multiplier(r), second(c), v);
    });
}

Band Smoother::Equations::factored(double smoothing) const {
    Band band = *unsmoothed;
    each(stiffness,
         [&](Eigen::Index r, Eigen::Index c, double v) { band.add(multiplier(r), multiplier(c), smoothing * v); });
    band.factor();
    return band;
}

template <int columns>
Band::Sides<columns> Smoother::Equations::unknowns(const Band& band, const Columns<columns>& rights) const {
    Band::Sides<columns> all = Band::Sides<columns>::Zero(count() + joins.rows(), rights.cols());
    for (Eigen::Index r = 0; r < joins.rows(); ++r) all.row(multiplier(r)) = rights.row(r);
    return band.solve(std::move(all));
}

template <int columns>
Columns<columns> Smoother::Equations::pull(const Band::Sides<columns>& unknowns) const {
    Columns<columns> multipliers(joins.rows(), unknowns.cols());
    for (Eigen::Index r = 0; r < joins.rows(); ++r) multipliers.row(r) = unknowns.row(multiplier(r));
    return across * multipliers;
}

Smoother::Equations::Solved Smoother::Equations::solved(double smoothing) const {
    Band band = factored(smoothing);
    Band::Sides<2> found = unknowns(band, right);
    Rows pulled = pull(found);
    return {smoothing, std::move(band), std::move(found), std::move(pulled)};
}

Spline Smoother::Equations::spline(const Solved& solved) const {
    const Rows missed = solved.smoothing * (free.asDiagonal() * solved.pulled);
    Spline spline{knots, {}, {}, {}, trend};
    for (std::vector<Point>* all : {&spline.points, &spline.offs, &spline.seconds}) all->reserve(knots.size());
    for (Eigen::Index i = 0; i < count(); ++i) {
        spline.points.push_back(point(points, i) - point(missed, i));
        spline.offs.push_back(point(off, i) - point(missed, i));
        spline.seconds.push_back(point(solved.unknowns, second(i)));
    }
    return spline;
}

std::vector<Point> Smoother::Equations::left_out(const Solved& solved) const {
    // What is missed is smoothing * pull(right), a linear map of the points; so without point i it would be missed by
    // its pull over the pull on itself were it alone 1 and all others 0. Points a comb apart are raised at once, with
    // signs that take turns: where the spline carries nothing that far it makes no difference.
    constexpr Eigen::Index comb = 24;
    const Eigen::Index wide = std::min(comb, count());
    Eigen::MatrixXd raised = Eigen::MatrixXd::Zero(count(), wide);
    for (Eigen::Index i = 0; i < count(); ++i) raised(i, i % wide) = i / wide % 2 == 0 ? 1 : -1;
    const Eigen::MatrixXd own = pull(unknowns(solved.band, Eigen::MatrixXd(differences * raised)));
    std::vector<Point> found(index(count()));
    for (Eigen::Index i = 1; i + 1 < count(); ++i)
        found[index(i)] = point(solved.pulled, i) * (raised(i, i % wide) / own(i, i % wide));
    return found;
}

Smoother::Smoother(std::vector<double> knots, const std::vector<Point>& points, Trend trend, const Ends& ends)
    : equations_(std::make_unique<Equations>()) {
    const auto most = static_cast<Eigen::Index>(std::min(most_powers, knots.size()));
    equations_->straight = trend == Trend::straight;
    equations_->trend = polynomial(knots, points, equations_->straight ? 2 : most);
    equations_->knots = std::move(knots);
    equations_->set(points, ends);
}

Smoother::Smoother(std::vector<double> knots, const std::vector<Point>& points, Law trend, const Ends& ends)
    : equations_(std::make_unique<Equations>()) {
    equations_->trend = std::move(trend);
    equations_->knots = std::move(knots);
    equations_->set(points, ends);
}

Smoother::~Smoother() = default;
Smoother::Smoother(Smoother&&) noexcept = default;
Smoother& Smoother::operator=(Smoother&&) noexcept = default;

Spline Smoother::smooth(double smoothing) const { return equations_->spline(equations_->solved(smoothing)); }

Smoother::Validated Smoother::validated(double smoothing) const {
    const Equations::Solved solved = equations_->solved(smoothing);
    return {equations_->spline(solved), equations_->left_out(solved)};
}

std::array<double, 2> Smoother::range() const {
    const Equations& e = *equations_;
    const double whole = e.knots.back() - e.knots.front();
    double least = whole;
    for (Eigen::Index i = 0; i + 1 < e.count(); ++i) least = std::min(least, e.gap(i));
    // The smoothing works over a length of about (smoothing * gap)^(1/6), off a straight trend of its fourth root.
    const double mean = whole / static_cast<double>(e.count() - 1);
    const int power = e.straight ? 3 : 5;
    return {1e-9 * std::pow(least, power), 100 * std::pow(whole, power + 1) / mean};
}

}  // namespace kerfpacket::curve
