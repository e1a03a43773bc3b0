#pragma once
// A cubic spline in the plane, and the one that smooths points: Reinsch's.

#include <array>
#include <memory>
#include <optional>
#include <vector>

#include "curve/curve.h"

namespace kerfpacket::curve {

/// Cubic between two knots; point, first and second derivative are continuous. Straight before the first knot and past
/// the last.
struct Spline {
    std::vector<double> knots;   ///< ascending
    std::vector<Point> points;   ///< at the knots
    std::vector<Point> seconds;  ///< second derivatives at the knots

    Jet at(double u) const;
    /// The law of the stretch between knot i and knot i + 1, gone on beyond them; straight beyond the spline's ends.
    Jet at(std::size_t i, double u) const;
};

/// Splines through the first and the last point and near the others, for any smoothing. Of all curves f it minimises
///     sum |f(knot_i) - point_i|^2 + smoothing * integral |f'' - trend''|^2
/// where the trend is a cubic polynomial in the parameter. Source: Reinsch, Smoothing by spline functions, Numerische
/// Mathematik 10 (1967) 177-183, applied to what the points stand off the trend.
class Smoother {
public:
    /// What it bends least away from: a straight line, or the cubic that fits the points best.
    enum class Trend { straight, cubic };

    /// `ends`: derivatives at the first and the last knot; where they are not given the curve bends there as the trend
    /// does. At least three points.
    Smoother(std::vector<double> knots, const std::vector<Point>& points, Trend trend,
             const std::optional<std::array<Direction, 2>>& ends);
    ~Smoother();
    Smoother(const Smoother&) = delete;
    Smoother& operator=(const Smoother&) = delete;

    /// In mm^3: 0 goes through every point. Takes time in proportion to the number of points.
    Spline smooth(double smoothing) const;
    /// Smoothings between which the spline goes from through every point to as good as the trend.
    std::array<double, 2> range() const;

private:
    struct Equations;
    std::unique_ptr<Equations> equations_;
};

}  // namespace kerfpacket::curve
