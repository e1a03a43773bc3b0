// A curve as lines and arcs: what is no arc itself becomes pairs of arcs that join smoothly.

#include <algorithm>
#include <cmath>

#include "curve/curve.h"
#include "curve/stretch.h"

namespace kerfpacket::curve {
namespace {

using geom::Segment;

/// How far the arcs may stray, and how often an interval may be halved to get there.
constexpr Length tolerance = Length::mm(1e-4);
constexpr int most_halvings = 16;

struct End {
    Point point;
    Direction direction;
    double u = 0;  ///< its parameter
};

double dot(Point a, Direction b) { return a.x.mm() * b.x + a.y.mm() * b.y; }
double angle(Direction from, Direction to) {
    return std::atan2(from.x * to.y - from.y * to.x, from.x * to.x + from.y * to.y);
}

Segment arc_from(Point from, Direction start, Point to) {
    return {from, to, Angle::radians(2 * angle(start, geom::direction(from, to)))};
}

/// Two arcs with the same tangent lengths from one end to the other, smooth where they meet.
std::array<Segment, 2> biarc(const End& a, const End& b) {
    const Point v = b.point - a.point;
    const double chord = dot(v, geom::direction(a.point, b.point));
    const double v_t = dot(v, a.direction) + dot(v, b.direction);
    const double bend = 1 - (a.direction.x * b.direction.x + a.direction.y * b.direction.y);
    const double reach = chord * chord / (v_t + std::sqrt(v_t * v_t + 2 * bend * chord * chord));
    const Point middle = (a.point + b.point + a.direction * Length::mm(reach) - b.direction * Length::mm(reach)) * 0.5;
    const Segment second = arc_from(b.point, -b.direction, middle);
    return {arc_from(a.point, a.direction, middle), second.reversed()};
}

/// How far points stand off an arc, gone on as a full circle, or off a line.
class Off {
public:
    explicit Off(const Segment& s) : straight_(std::abs(s.turn.radians()) < 1e-9) {
        if (straight_) across_ = geom::direction(s.from, s.to).left();
        else radius_ = s.radius();
        from_ = straight_ ? s.from : s.centre();
    }
    Length operator()(Point p) const {
        if (straight_) return Length::mm(std::abs(dot(p - from_, across_)));
        return measure::abs(geom::distance(p, from_) - radius_);
    }

private:
    bool straight_;
    Point from_;  ///< a point of the line, or the centre
    Direction across_;
    Length radius_;
};

}  // namespace

Path Curve::path() const {
    std::vector<Segment> segments;
    const auto add = [&](Segment s) {
        if (!segments.empty()) s.from = segments.back().to;
        if (std::abs(s.turn.radians()) < 1e-12) s.turn = {};
        if (s.chord().mm() > 1e-9) segments.push_back(s);
    };
    const auto end_at = [&](const Stretch& stretch, double u) {
        const Jet j = jet(stretch, u);
        const Direction along = direction(j);
        return End{j.point + along.left() * offset_, along, u};
    };
    const auto halve = [&](const auto& self, const Stretch& stretch, const End& from, const End& to,
                           int halvings) -> void {
        const std::array<Segment, 2> arcs = biarc(from, to);
        const Off first(arcs[0]), second(arcs[1]);
        bool near = true;
        for (const double part : {0.15, 0.35, 0.5, 0.65, 0.85}) {
            if (!near) break;
            const Point p = end_at(stretch, from.u + (to.u - from.u) * part).point;
            near = std::min(first(p), second(p)) <= tolerance;
        }
        if (near || halvings == most_halvings) {
            for (const Segment& s : arcs) add(s);
            return;
        }
        const End middle = end_at(stretch, (from.u + to.u) / 2);
        self(self, stretch, from, middle, halvings + 1);
        self(self, stretch, middle, to, halvings + 1);
    };
    for (const Run& run : runs()) {
        if (const auto* segment = std::get_if<Segment>(&run.stretch)) {
            const Path parallel = Path({*segment}).offset_left(offset_);
            add(parallel.segments().front());
            continue;
        }
        End from = end_at(run.stretch, run.nodes.front().u);
        for (std::size_t i = 1; i < run.nodes.size(); ++i) {
            const End to = end_at(run.stretch, run.nodes[i].u);
            halve(halve, run.stretch, from, to, 0);
            from = to;
        }
    }
    return Path(std::move(segments));
}

}  // namespace kerfpacket::curve
