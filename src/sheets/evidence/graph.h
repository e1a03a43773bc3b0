#pragma once
// What the two drawings of the strain sheet share: a frame with axes from 0, even steps, marks.

#include <utility>
#include <vector>

#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// The least step a tape has a mark for that divides `range` into at most `most` parts: parts of an inch in halves,
/// then 1, 2, 3, 6, 12 in and doubled; 1, 2, 5 mm and their tens.
Length tape_step(Length range, int most, Unit unit);

/// A rectangle of the page whose lower left corner is the origin of both axes.
struct Graph {
    Rect area;

    /// A point by how far it lies along each axis, as a part of the axis.
    Point at(double across, double up) const {
        return {area.low.x + area.width() * across, area.low.y + area.height() * up};
    }
    /// The parts of a line through these points that lie inside.
    std::vector<Path> inside(const std::vector<Point>& points) const;
};

/// A line through points, without those that it can do without: it stays within a fiftieth of a millimetre of each.
Path thinned(const std::vector<Point>& points);

/// A line with a white seam on both sides, so that it is seen on a hatch.
void stroke_seamed(Pen& pen, const std::vector<Path>& parts, Length width, Dash dash);

/// A dot in a ring.
void ringed_dot(Pen& pen, Point at);
inline constexpr Length dot_ring_radius = Length::points(5);

/// An arrow that points up to the edge of a drawing: what it marks lies beyond.
void beyond_arrow(Pen& pen, Point tip);

}  // namespace kerfpacket::sheets
