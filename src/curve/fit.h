#pragma once
// What the fits of circle and ellipse share: points scaled to the order of one, and which side is outward.

#include <Eigen/Core>
#include <vector>

#include "curve/survey.h"

namespace kerfpacket::curve {

/// Points about their mean, in a unit that makes their mean square distance from it 1.
struct Scaled {
    std::vector<Eigen::Vector2d> at;
    Point mean;
    Length unit;

    Point back(const Eigen::Vector2d& p) const { return mean + Point{unit * p.x(), unit * p.y()}; }
    Eigen::Vector2d forth(Point p) const { return {(p.x - mean.x) / unit, (p.y - mean.y) / unit}; }
};

/// Not all the same.
Scaled scale(const std::vector<Point>& points);

/// Whether the points, in their order, go round the centre clockwise: then what is outside lies to the left of travel.
bool left_is_outward(const std::vector<Point>& points, Point centre);

/// Of any point, square to the ellipse; outside positive where left is outward.
Length miss(const EllipseFit& ellipse, Point point, bool left_is_outward);

}  // namespace kerfpacket::curve
