#include "curve/fit.h"

#include <algorithm>
#include <cmath>

#include "measure/require.h"

namespace kerfpacket::curve {

Scaled scale(const std::vector<Point>& points) {
    Scaled scaled;
    const auto count = static_cast<double>(points.size());
    for (const Point p : points) scaled.mean = scaled.mean + p * (1 / count);
    double squares = 0;
    for (const Point p : points) {
        const double d = distance(p, scaled.mean).mm();
        squares += d * d;
    }
    scaled.unit = Length::mm(std::sqrt(squares / count));
    measure::require(scaled.unit > Length(), "measured points are apart");
    scaled.at.reserve(points.size());
    for (const Point p : points) scaled.at.push_back(scaled.forth(p));
    return scaled;
}

bool left_is_outward(const std::vector<Point>& points, Point centre) {
    double swept = 0;
    for (std::size_t i = 1; i < points.size(); ++i) {
        const Point a = points[i - 1] - centre;
        const Point b = points[i] - centre;
        swept += a.x.mm() * b.y.mm() - a.y.mm() * b.x.mm();
    }
    return swept < 0;
}

std::size_t Misses::worst_point() const {
    const auto larger = [](Length a, Length b) { return measure::abs(a) < measure::abs(b); };
    return static_cast<std::size_t>(std::max_element(at.begin(), at.end(), larger) - at.begin());
}

Length Misses::worst() const { return at.empty() ? Length() : measure::abs(at[worst_point()]); }

}  // namespace kerfpacket::curve
