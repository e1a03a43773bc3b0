#include <Eigen/Core>
#include <cmath>

#include "curve/fit.h"
#include "curve/least_squares.h"

namespace kerfpacket::curve {
namespace {

/// Flatter than this is straight: rise over chord of what was measured, about.
constexpr double straight = 1e-7;

/// A circle or a line in the plane of the scaled points: bend * (x^2 + y^2) + e (x cos(facing) + y sin(facing)) + shift
/// = 0 with e^2 = 1 + 4 bend shift; bend is half the curvature and 0 for a line. Parameters after Chernov and Lesort,
/// Least squares fitting of circles, J. Math. Imaging Vis. 23 (2005) 239-252: nothing runs off to infinity where the
/// points are nearly straight.
using Unknowns = Eigen::Vector3d;
enum { bend, shift, facing };

Residuals distances(const Scaled& points, const Unknowns& u) {
    const double e = std::sqrt(1 + 4 * u[bend] * u[shift]);
    const double c = std::cos(u[facing]);
    const double s = std::sin(u[facing]);
    const auto count = static_cast<Eigen::Index>(points.at.size());
    Residuals r{Eigen::VectorXd(count), Eigen::MatrixXd(count, 3)};
    for (Eigen::Index i = 0; i < count; ++i) {
        const Eigen::Vector2d& p = points.at[static_cast<std::size_t>(i)];
        const double along = p.x() * c + p.y() * s;
        const double off = u[bend] * p.squaredNorm() + e * along + u[shift];
        // The distance d solves bend d^2 + d = off; root = 1 + 2 bend d.
        const double root = std::sqrt(std::max(0.0, 1 + 4 * u[bend] * off));
        const double d = 2 * off / (1 + root);
        const Eigen::RowVector3d slope(p.squaredNorm() + 2 * u[shift] / e * along - d * d, 1 + 2 * u[bend] / e * along,
                                       e * (p.y() * c - p.x() * s));
        r.values[i] = d;
        r.slopes.row(i) = slope / std::max(root, 1e-9);
    }
    return r;
}

/// The algebraic fit: of all a (x^2 + y^2) + b x + c y + d with a^2 + b^2 + c^2 + d^2 = 1 the one with the least sum of
/// squares. Only a start: it weighs far points more, and its radius comes out too small.
std::optional<Unknowns> start(const Scaled& points) {
    Eigen::Matrix4d sums = Eigen::Matrix4d::Zero();
    for (const Eigen::Vector2d& p : points.at) {
        const Eigen::Vector4d row(p.squaredNorm(), p.x(), p.y(), 1);
        sums += row * row.transpose();
    }
    const Eigen::Vector4d v = least_eigenvector(sums);
    const double size = v[1] * v[1] + v[2] * v[2] - 4 * v[0] * v[3];
    if (size <= 0) return std::nullopt;
    const double scale = std::sqrt(size);
    return Unknowns(v[0] / scale, v[3] / scale, std::atan2(v[2], v[1]));
}

}  // namespace

std::optional<CircleFit> fit_circle(const std::vector<Point>& points) {
    if (points.size() < 3) return std::nullopt;
    const Scaled scaled = scale(points);
    const std::optional<Unknowns> first = start(scaled);
    if (!first) return std::nullopt;
    const auto found = least_squares(*first, [&](const Unknowns& u) { return distances(scaled, u); });
    const Unknowns& u = found.unknowns;
    if (!found.converged || std::abs(u[bend]) < straight) return std::nullopt;
    const double e = std::sqrt(1 + 4 * u[bend] * u[shift]);
    CircleFit fit;
    fit.centre = scaled.back({-e * std::cos(u[facing]) / (2 * u[bend]), -e * std::sin(u[facing]) / (2 * u[bend])});
    fit.radius = scaled.unit * (1 / (2 * std::abs(u[bend])));
    const double outward = left_is_outward(points, fit.centre) ? 1 : -1;
    for (const Point p : points) fit.misses.at.push_back((distance(p, fit.centre) - fit.radius) * outward);
    return fit;
}

}  // namespace kerfpacket::curve
