#pragma once
// A cubic spline in the plane, and the one that smooths points.

#include <array>
#include <functional>
#include <memory>
#include <optional>
#include <vector>

#include "curve/curve.h"

namespace kerfpacket::curve {

/// A point with its derivatives at any parameter.
using Law = std::function<Jet(double)>;

/// A trend, and a cubic between two knots added to it; point, first and second derivative are continuous. Straight
/// before the first knot and past the last.
struct Spline {
    std::vector<double> knots;   ///< ascending
    std::vector<Point> points;   ///< at the knots
    std::vector<Point> offs;     ///< of the points, off the trend
    std::vector<Point> seconds;  ///< second derivatives of what is added to the trend, at the knots
    Law trend;

    Jet at(double u) const;
    /// The law of the stretch between knot i and knot i + 1, gone on beyond them; straight beyond the spline's ends.
    Jet at(std::size_t i, double u) const;
};

/// Splines through the first and the last point and near the others, for any smoothing. Of all f that are a trend and
/// a cubic spline they minimise
///     sum |f(knot_i) - point_i|^2 + smoothing * integral |f''' - trend'''|^2,
/// so that nothing is asked of the ends. Off a straight trend it is |f''|^2 instead, which flattens them too. Method:
/// smoothing by spline functions, Reinsch, Numerische Mathematik 10 (1967) 177-183, with the second derivatives at the
/// ends left free and the third derivative in place of the second.
class Smoother {
public:
    /// What it bends least away from: a straight line, or the cubic that fits the points best.
    enum class Trend { straight, cubic };
    using Ends = std::optional<std::array<Direction, 2>>;

    /// `ends`: derivatives at the first and the last knot; where they are not given they are free. At least three
    /// points.
    Smoother(std::vector<double> knots, const std::vector<Point>& points, Trend trend, const Ends& ends);
    /// Off a curve that is known.
    Smoother(std::vector<double> knots, const std::vector<Point>& points, Law trend, const Ends& ends);
    ~Smoother();
    Smoother(Smoother&&) noexcept;
    Smoother& operator=(Smoother&&) noexcept;

    /// In mm^5 (mm^3 off a straight trend): 0 goes through every point. Takes time in proportion to the number of
    /// points.
    Spline smooth(double smoothing) const;
    struct Validated {
        Spline spline;
        /// For each point what the others alone leave of it: the point less the place of its knot on the spline that
        /// is told nothing of it, with the same knots, trend and smoothing; nothing at the two ends. Of more than 24
        /// points each is told with others that stand 24 apart, a few hundredths off.
        std::vector<Point> left_out;
    };
    Validated validated(double smoothing) const;
    /// Smoothings between which the spline goes from through every point to as good as the trend.
    std::array<double, 2> range() const;

private:
    struct Equations;
    std::unique_ptr<Equations> equations_;
};

}  // namespace kerfpacket::curve
