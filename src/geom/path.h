#pragma once
// Paths of straight lines and circular arcs: length, position, curvature, true parallels, clipping.

#include <array>
#include <optional>
#include <vector>

#include "geom/point.h"

namespace kerfpacket::geom {

/// A straight line (turn 0) or a circular arc from one point to another. `turn` is the signed angle by which the
/// direction of travel changes, anticlockwise positive, less than a full turn either way.
struct Segment {
    Point from;
    Point to;
    Angle turn;

    bool is_line() const { return turn.radians() == 0; }
    Length chord() const { return distance(from, to); }
    /// Arc length (the chord for a line).
    Length length() const;
    /// Radius of the arc, always positive; a line has none (do not ask).
    Length radius() const;
    Point centre() const;
    /// Direction of travel at the start and at the end.
    Direction start_direction() const;
    Direction end_direction() const;
    /// Point and direction at a fraction 0..1 of the length.
    Point point(double fraction) const;
    Direction direction_at(double fraction) const;
    /// The part between two fractions 0 <= a <= b <= 1.
    Segment part(double a, double b) const;
    Segment reversed() const { return {to, from, -turn}; }
    /// About the y axis and about the x axis, travelled the same way.
    Segment mirrored_left_right() const { return {{-from.x, from.y}, {-to.x, to.y}, -turn}; }
    Segment mirrored_up_down() const { return {{from.x, -from.y}, {to.x, -to.y}, -turn}; }
    Rect bounds() const;
    bool operator==(const Segment&) const = default;
};

/// A point on a path with the direction of travel there.
struct Station {
    Point point;
    Direction direction;
};

/// A run of segments, each starting where the one before ends.
class Path {
public:
    Path() = default;
    explicit Path(std::vector<Segment> segments, bool closed = false);

    static Path line(Point from, Point to) { return Path({{from, to, {}}}); }
    static Path arc(Point from, Point to, Angle turn) { return Path({{from, to, turn}}); }
    static Path polyline(const std::vector<Point>& points, bool closed = false);
    static Path rectangle(const Rect& rect);
    static Path circle(Point centre, Length radius);

    const std::vector<Segment>& segments() const { return segments_; }
    bool closed() const { return closed_; }
    bool empty() const { return segments_.empty(); }
    Point start() const { return segments_.front().from; }
    Point end() const { return segments_.back().to; }

    Length length() const;
    /// Sum of the turns of all segments.
    Angle turn() const;
    /// Point and direction at a distance from the start, clamped to the path.
    Station at(Length distance) const;
    /// Signed curvature in 1/mm at a distance from the start.
    double curvature_at(Length distance) const;
    Rect bounds() const;

    /// The true parallel at a signed distance to the left of travel. Every arc keeps its centre, so
    /// joints between tangent segments stay joints. Toward the centre of an arc the offset must be smaller than its
    /// radius: asserted, for a parallel beyond it would fold on itself.
    Path offset_left(Length by) const;
    Path reversed() const;
    /// As its segments.
    Path mirrored_left_right() const;
    Path mirrored_up_down() const;
    Path moved(Point by) const;
    /// Turned about the origin.
    Path turned(Angle by) const;
    bool operator==(const Path&) const = default;

private:
    std::vector<Segment> segments_;
    bool closed_ = false;
};

/// Parts of a path inside a rectangle, in order of travel.
std::vector<Path> clip(const Path& path, const Rect& window);

/// Fractions 0..1, ascending, at which a segment meets the infinite line through a point. An end counts where the line
/// passes it within 1e-6 mm.
std::vector<double> crossings(const Segment& segment, Point on_line, Direction along);

/// The topmost crossing of a curve with the upright at x.
std::optional<Length> height_over(const Path& curve, Length x);

/// Control points of the cubic curves that draw a segment: each entry {c1, c2, end}. A line gives one entry whose
/// control points lie on it. As many pieces as keep it within a thousandth of a millimetre of the true circle.
std::vector<std::array<Point, 3>> cubic_pieces(const Segment& segment);

}  // namespace kerfpacket::geom
