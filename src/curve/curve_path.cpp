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

/// Distance of a point from the nearer of two arcs, each gone on as a full circle or line.
Length stray(const std::array<Segment, 2>& arcs, Point p) {
    const auto off = [&](const Segment& s) {
        if (std::abs(s.turn.radians()) < 1e-9) {
            const Direction along = geom::direction(s.from, s.to);
            return Length::mm(std::abs(dot(p - s.from, along.left())));
        }
        return measure::abs(geom::distance(p, s.centre()) - s.radius());
    };
    return std::min(off(arcs[0]), off(arcs[1]));
}

}  // namespace

Path Curve::path() const {
    std::vector<Segment> segments;
    const auto add = [&](Segment s) {
        if (!segments.empty()) s.from = segments.back().to;
        if (std::abs(s.turn.radians()) < 1e-12) s.turn = {};
        if (s.chord().mm() > 1e-9) segments.push_back(s);
    };
    const auto halve = [&](const auto& self, const Stretch& stretch, double from, double to, int halvings) -> void {
        const auto end = [&](double u) {
            const Jet j = jet(stretch, u);
            const Direction along = direction(j);
            return End{j.point + along.left() * offset_, along};
        };
        const std::array<Segment, 2> arcs = biarc(end(from), end(to));
        bool near = true;
        for (const double part : {0.15, 0.35, 0.5, 0.65, 0.85})
            near = near && stray(arcs, end(from + (to - from) * part).point) <= tolerance;
        if (near || halvings == most_halvings) {
            for (const Segment& s : arcs) add(s);
            return;
        }
        const double middle = (from + to) / 2;
        self(self, stretch, from, middle, halvings + 1);
        self(self, stretch, middle, to, halvings + 1);
    };
    for (const Run& run : runs()) {
        if (const auto* segment = std::get_if<Segment>(&run.stretch)) {
            const Path parallel = Path({*segment}).offset_left(offset_);
            add(parallel.segments().front());
            continue;
        }
        for (std::size_t i = 1; i < run.nodes.size(); ++i)
            halve(halve, run.stretch, run.nodes[i - 1].u, run.nodes[i].u, 0);
    }
    return Path(std::move(segments));
}

}  // namespace kerfpacket::curve
