#include <Eigen/Core>
#include <algorithm>
#include <cmath>

#include "curve/fit.h"
#include "curve/least_squares.h"

namespace kerfpacket::curve {
namespace {

/// Beyond these an ellipse has run off to a parabola or a line.
constexpr double most_axis = 50;   ///< half axis, in chords
constexpr double most_ratio = 30;  ///< of one half axis to the other

/// The half axes by their logarithms, so that they stay positive.
using Unknowns = Eigen::Vector4d;
enum { centre_x, centre_y, log_width, log_height };

/// Nearest point of an ellipse x = a cos t, y = b sin t, as (cos t, sin t), for a point in the first quadrant and
/// a >= b. The foot is (a^2 x/(a^2 + q), b^2 y/(b^2 + q)) for the largest q that puts it on the ellipse; the search
/// starts below that q, where Newton's method only climbs. Robust for points on the axes too.
Eigen::Vector2d first_quadrant_foot(double a, double b, double x, double y) {
    if (y <= 1e-14 * b) {
        // On the long axis, within the centres of curvature of its ends, the nearest point lies aside.
        const double c = a * x / (a * a - b * b);
        if (a > b && c < 1) return {c, std::sqrt(1 - c * c)};
        return {1, 0};
    }
    double q = std::max(b * (y - b), a * (x - a));
    constexpr int most_steps = 60;
    for (int step = 0; step < most_steps; ++step) {
        const double c = a * x / (a * a + q);
        const double s = b * y / (b * b + q);
        const double excess = c * c + s * s - 1;
        const double by = excess / (2 * (c * c / (a * a + q) + s * s / (b * b + q)));
        q += by;
        if (!(by > 1e-15 * (b * b + q))) break;
    }
    const Eigen::Vector2d foot(a * x / (a * a + q), b * y / (b * b + q));
    return foot.normalized();
}

/// As above, for any point and any axes.
Eigen::Vector2d foot(double a, double b, const Eigen::Vector2d& p) {
    const Eigen::Vector2d aside = p.cwiseAbs();
    Eigen::Vector2d f = a >= b ? first_quadrant_foot(a, b, aside.x(), aside.y())
                               : Eigen::Vector2d(first_quadrant_foot(b, a, aside.y(), aside.x()).reverse());
    return {std::copysign(f.x(), p.x()), std::copysign(f.y(), p.y())};
}

/// Where the foot of a point lies, and how far the point stands off outward.
struct Off {
    Eigen::Vector2d foot;
    Eigen::Vector2d normal;
    double by;
};

/// The point from the centre.
Off off(double a, double b, const Eigen::Vector2d& p) {
    const Eigen::Vector2d f = foot(a, b, p);
    const Eigen::Vector2d on(a * f.x(), b * f.y());
    const Eigen::Vector2d normal = Eigen::Vector2d(b * f.x(), a * f.y()).normalized();
    return {on, normal, (p - on).dot(normal)};
}

Residuals distances(const Scaled& points, const Unknowns& u) {
    const double a = std::exp(u[log_width]);
    const double b = std::exp(u[log_height]);
    const auto count = static_cast<Eigen::Index>(points.at.size());
    Residuals r{Eigen::VectorXd(count), Eigen::MatrixXd(count, 4)};
    for (Eigen::Index i = 0; i < count; ++i) {
        const Eigen::Vector2d& p = points.at[static_cast<std::size_t>(i)];
        const Off o = off(a, b, p - Eigen::Vector2d(u[centre_x], u[centre_y]));
        // The distance is stationary in the foot, so only the move of the ellipse along its normal counts.
        r.values[i] = o.by;
        r.slopes.row(i) << -o.normal.x(), -o.normal.y(), -o.normal.cwiseProduct(o.foot).transpose();
    }
    return r;
}

/// The algebraic fit: x^2 + q y^2 + r x + s y + t = 0.
std::optional<Unknowns> algebraic(const Scaled& points) {
    const auto count = static_cast<Eigen::Index>(points.at.size());
    Eigen::MatrixXd rows(count, 4);
    Eigen::VectorXd right(count);
    for (Eigen::Index i = 0; i < count; ++i) {
        const Eigen::Vector2d& p = points.at[static_cast<std::size_t>(i)];
        rows.row(i) << p.y() * p.y(), p.x(), p.y(), 1;
        right[i] = -p.x() * p.x();
    }
    const Eigen::Vector4d v = linear_least_squares(rows, right);
    if (v[0] <= 0) return std::nullopt;
    const double x = -v[1] / 2;
    const double y = -v[2] / (2 * v[0]);
    const double square = x * x + v[0] * y * y - v[3];
    if (square <= 0) return std::nullopt;
    return Unknowns(x, y, std::log(square) / 2, std::log(square / v[0]) / 2);
}

std::vector<Unknowns> starts(const std::vector<Point>& points, const Scaled& scaled) {
    std::vector<Unknowns> found;
    if (const auto start = algebraic(scaled)) found.push_back(*start);
    if (const auto circle = fit_circle(points)) {
        const Eigen::Vector2d centre = scaled.forth(circle->centre);
        const double size = std::log(circle->radius / scaled.unit);
        found.emplace_back(centre.x(), centre.y(), size, size);
    }
    // The half ellipse over the points: its centre between the ends.
    const Eigen::Vector2d base = (scaled.at.front() + scaled.at.back()) / 2;
    double height = 0;
    for (const Eigen::Vector2d& p : scaled.at) height = std::max(height, std::abs(p.y() - base.y()));
    const double width = (scaled.at.back() - scaled.at.front()).norm() / 2;
    if (height > 0 && width > 0) found.emplace_back(base.x(), base.y(), std::log(width), std::log(height));
    return found;
}

}  // namespace

Length miss(const EllipseFit& ellipse, Point point, bool left_is_outward) {
    const Point p = point - ellipse.centre;
    const double by = off(ellipse.half_width.mm(), ellipse.half_height.mm(), Eigen::Vector2d(p.x.mm(), p.y.mm())).by;
    return Length::mm(left_is_outward ? by : -by);
}

std::optional<EllipseFit> fit_ellipse(const std::vector<Point>& points) {
    if (points.size() < 5) return std::nullopt;
    const Scaled scaled = scale(points);
    const auto residuals = [&](const Unknowns& u) { return distances(scaled, u); };
    std::vector<Unknowns> tries = starts(points, scaled);
    std::sort(tries.begin(), tries.end(),
              [&](const Unknowns& a, const Unknowns& b) { return residuals(a).sum() < residuals(b).sum(); });
    const double chord = (scaled.at.back() - scaled.at.front()).norm();
    for (const Unknowns& start : tries) {
        const auto found = least_squares(start, residuals);
        const double a = std::exp(found.unknowns[log_width]);
        const double b = std::exp(found.unknowns[log_height]);
        if (!found.converged || std::max(a, b) > most_axis * chord) continue;
        if (std::max(a, b) > most_ratio * std::min(a, b)) continue;
        EllipseFit fit{scaled.back(found.unknowns.head<2>()), scaled.unit * a, scaled.unit * b, {}};
        const bool outward = left_is_outward(points, fit.centre);
        for (const Point p : points) fit.misses.at.push_back(miss(fit, p, outward));
        return fit;
    }
    return std::nullopt;
}

}  // namespace kerfpacket::curve
