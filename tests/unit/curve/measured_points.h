#pragma once
// Points as a tape would give them, on curves that are known.

#include <cmath>
#include <functional>
#include <random>
#include <vector>

#include "geom/point.h"

namespace kerfpacket::curve {

inline geom::Point in(double x, double y) { return {measure::Length::inches(x), measure::Length::inches(y)}; }

/// A height in inches over a place from -1 (left end) to 1.
using Height = std::function<double(double)>;

inline Height arc_height(double span, double rise) {
    const double radius = (span * span + 4 * rise * rise) / (8 * rise);
    return
        [=](double u) { return std::sqrt(std::max(0.0, radius * radius - u * u * span * span / 4)) - (radius - rise); };
}

inline Height ellipse_height(double rise) {
    return [=](double u) { return rise * std::sqrt(std::max(0.0, 1 - u * u)); };
}

/// Stations at even steps over a span. Heights off by up to `noise` either way, in inches; not those of the two ends.
inline std::vector<geom::Point> ordinates(double span, const Height& height, std::size_t count, double noise = 0,
                                          unsigned seed = 1) {
    std::mt19937 random(seed);
    std::uniform_real_distribution<double> off(-noise, noise);
    std::vector<geom::Point> points;
    for (std::size_t i = 0; i < count; ++i) {
        const double u = -1 + 2 * static_cast<double>(i) / static_cast<double>(count - 1);
        const bool end = i == 0 || i + 1 == count;
        points.push_back(in(u * span / 2, height(u) + (end ? 0 : off(random))));
    }
    return points;
}

}  // namespace kerfpacket::curve
