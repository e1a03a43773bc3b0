#pragma once
// What the fits of circle and ellipse share: points scaled to the order of one, and which side is outward.

#include <Eigen/Core>
#include <optional>
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

/// As in `survey.h`, where the best circle and the best ellipse of the points are known already.
FairFit fit_fair(const std::vector<Point>& points, const Fairness& fairness, const std::optional<CircleFit>& circle,
                 const std::optional<EllipseFit>& ellipse);

/// Of any point, square to the ellipse; outside positive where left is outward.
Length miss(const EllipseFit& ellipse, Point point, bool left_is_outward);

}  // namespace kerfpacket::curve
