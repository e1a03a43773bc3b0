#pragma once
// Curves that are known exactly: runs of lines, arcs and parametric stretches that join smoothly.

#include <array>
#include <functional>
#include <memory>
#include <variant>
#include <vector>

#include "geom/path.h"

namespace kerfpacket::curve {

using geom::Angle;
using geom::Direction;
using geom::Length;
using geom::Path;
using geom::Point;

/// A point of a parametric stretch with its first and second derivative by the parameter, in mm.
struct Jet {
    Point point;
    Point first;
    Point second;
};

/// A smooth stretch given by a parameter that runs upward from `from` to `to`. `at` must also be defined a little
/// beyond both, as the natural continuation, and its first derivative is never zero.
struct Parametric {
    std::function<Jet(double)> at;
    double from = 0;
    double to = 1;
};

/// An exact line or arc, or a parametric stretch.
using Stretch = std::variant<geom::Segment, Parametric>;

class LengthTable;

/// What is known at a place on a curve.
struct Spot {
    Point point;
    Direction direction;   ///< of travel
    double curvature = 0;  ///< 1/mm, signed, anticlockwise positive
    Angle turned;          ///< from the start of the curve, signed, not reduced to a full turn
};

/// A curve without corners: its direction is continuous, its curvature may jump where two stretches join. Lengths are
/// exact: closed forms for lines and arcs, Gauss-Kronrod quadrature (Boost.Math) for parametric stretches, good to
/// 1e-12 relative.
class Curve {
public:
    /// Stretches that each start where the one before ends, in its direction.
    explicit Curve(std::vector<Stretch> stretches);
    static Curve of(const Path& path);

    Length length() const;
    /// Signed; anticlockwise positive.
    Angle turn() const;
    /// At a distance from the start. Before the start and past the end the first and last stretch go on by their own
    /// law (an arc as an arc, an ellipse as an ellipse, a fair curve straight), or straight where `going_on_straight`.
    Spot at(Length distance) const;
    /// The same curve, and its parallels, gone on straight before the start and past the end: one that ends on a
    /// reverse arc would come back by its own law.
    Curve going_on_straight() const;
    /// Distances, start and end included, at which stretches join: between two of them the curvature is smooth.
    std::vector<Length> joints() const;
    /// Greatest curvature to the left and to the right of travel, each as a magnitude in 1/mm and where; 0 where the
    /// curve never bends that way. Between two distances on the curve.
    struct Sharpest {
        double curvature = 0;
        Length at;
    };
    Sharpest sharpest_left(Length from, Length to) const;
    Sharpest sharpest_right(Length from, Length to) const;
    /// Where the curve changes from bending one way to bending the other.
    std::vector<Length> inflections() const;

    /// The true parallel at a signed distance to the left of travel. `turn` stays; length changes by -left * turn; the
    /// place at distance s here has there the same normal. Must not fold: see `folds`.
    Curve parallel(Length left) const;
    /// Distance along the parallel of the place that lies at `distance` here: distance - left * turned(distance).
    Length on_parallel(Length distance, Length left) const;
    /// Distance here of the place that lies at `distance` along the parallel; the inverse of the above.
    Length from_parallel(Length distance, Length left) const;
    /// The part between two distances, which may lie beyond the ends.
    Curve part(Length from, Length to) const;
    Curve reversed() const;
    Curve moved(Point by) const;
    Curve turned(Angle by) const;

    /// The curve as lines and arcs for drawing: exact where it is made of them, elsewhere arcs that join smoothly and
    /// stay within 1e-4 mm.
    Path path() const;
    /// Whether it is exactly made of lines and arcs; then `path` is it.
    bool is_exact_path() const;

    /// Asks for one place after the other.
    class Following;

private:
    /// A place of a stretch's parameter, with the length and the turn from the start of the curve's base to it.
    struct Node {
        double u = 0;
        double length = 0;  ///< mm
        double turned = 0;  ///< radians
        Node after(double parameter, double more_length, double more_turned) const {
            return {parameter, length + more_length, turned + more_turned};
        }
    };
    struct Run {
        Stretch stretch;
        std::vector<Node> nodes;
        std::vector<LengthTable> lengths;  ///< of a parametric stretch: from each node to the next
    };
    /// A parameter of a run, with length and turn of the base there.
    struct Place {
        std::size_t run = 0;
        Node node;
        double beyond = 0;  ///< mm straight on from the node
    };

    Curve() = default;
    using Runs = std::vector<Run>;
    /// Adds a stretch that begins where `node` says, and moves the node to its end.
    static void add(Runs& runs, Stretch stretch, Node& node);
    const Runs& runs() const { return *runs_; }
    double distance(const Node& node) const;
    double distance(const Place& place) const { return distance(place.node) + place.beyond; }
    /// How far a distance lies past the end (positive) or before the start where the curve goes on straight there.
    double beyond(double along) const;
    geom::Segment straight_on(const Place& from, double by) const;
    /// What a place lies between: nodes of a run, and of a parametric stretch known parameters.
    struct Between {
        std::size_t run = 0;
        std::size_t node = 1;   ///< the one after it
        std::size_t known = 1;  ///< the same
        double from = 0;        ///< mm: what any place lies between from here on, but for `to`
        double to = 0;
    };
    Between between(double along) const;
    Place place(const Between& between, double along) const;
    Place locate(double along) const { return place(between(along), along); }
    Spot spot(const Place& place) const;
    double curvature(const Place& place, const Jet& there) const;
    Curve with(std::vector<Stretch> stretches) const;
    Sharpest sharpest(Length from, Length to, double sign) const;

    /// Parallels share them.
    std::shared_ptr<const Runs> runs_;
    /// The curve is the parallel of its stretches at this distance to the left.
    Length offset_;
    /// Whether it goes on straight before its start and past its end.
    std::array<bool, 2> straight_on_{};
};

/// A place that lies between the same as the last one is not looked for again. The curve must outlive it.
class Curve::Following {
public:
    explicit Following(const Curve& curve) : curve_(curve) {}
    double curvature(Length distance);
    Angle turned(Length distance) { return Angle::radians(locate(distance).node.turned); }

private:
    Place locate(Length distance);

    const Curve& curve_;
    Between last_;
};

}  // namespace kerfpacket::curve
