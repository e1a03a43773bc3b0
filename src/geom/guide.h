#pragma once
// A path with its lengths at hand: what stands where along it, and what lies nearest to a point.

#include <algorithm>
#include <cmath>
#include <utility>
#include <vector>

#include "geom/path.h"

namespace kerfpacket::geom {

/// A path that is asked often for places along it.
class Guide {
public:
    explicit Guide(const Path& path) {
        for (const Segment& s : path.segments()) {
            parts_.push_back({s, length_, s.length(), s.point(0.5), {}, {}, 0});
            Part& part = parts_.back();
            if (!s.is_line()) {
                part.centre = s.centre();
                part.radius = s.radius();
                part.at_middle = direction(part.centre, part.middle).angle().radians();
            }
            length_ += parts_.back().length;
        }
    }

    Length length() const { return length_; }

    Station at(Length distance) const {
        const auto after = std::upper_bound(parts_.begin() + 1, parts_.end(), distance,
                                            [](Length at, const Part& part) { return at < part.start; });
        const Part& part = *(after - 1);
        const double fraction = std::clamp((distance - part.start) / part.length, 0.0, 1.0);
        return {part.segment.point(fraction), part.segment.direction_at(fraction)};
    }

    /// Distance along the path of its point nearest to p.
    Length nearest(Point p) const {
        const auto [part, fraction] = foot(p);
        return part->start + part->length * fraction;
    }

    /// That, and how far p lies to the left of the path there.
    std::pair<Length, Length> nearest_and_left(Point p) const {
        const auto [part, fraction] = foot(p);
        const Length at = part->start + part->length * fraction;
        if (within_arc(*part, fraction)) {
            const Length outside = distance(part->centre, p) - part->radius;
            return {at, part->segment.turn.radians() > 0 ? -outside : outside};
        }
        const Direction along = part->segment.direction_at(fraction);
        const Point from = p - part->segment.point(fraction);
        return {at, from.y * along.x - from.x * along.y};
    }

private:
    struct Part {
        Segment segment;
        Length start;
        Length length;
        Point middle;
        Point centre;          ///< of an arc
        Length radius;         ///< of the same
        double at_middle = 0;  ///< of an arc: where its middle stands round the centre, radians
    };

    /// The part on which the nearest point lies, and where on it.
    std::pair<const Part*, double> foot(Point p) const {
        // The part whose middle is nearest rules nearly all others out.
        const auto likely = std::min_element(parts_.begin(), parts_.end(), [&](const Part& a, const Part& b) {
            return square(p - a.middle) < square(p - b.middle);
        });
        const Part* best = &*likely;
        double fraction = nearest_fraction(*best, p);
        Length least = off(*best, fraction, p);
        for (const Part& part : parts_) {
            const Length reach = least + part.length / 2;
            if (&part == &*likely || square(p - part.middle) >= reach.mm() * reach.mm()) continue;
            const double there = nearest_fraction(part, p);
            const Length distance = off(part, there, p);
            if (distance >= least) continue;
            least = distance;
            best = &part;
            fraction = there;
        }
        return {best, fraction};
    }

    static double square(Point p) { return p.x.mm() * p.x.mm() + p.y.mm() * p.y.mm(); }

    static bool within_arc(const Part& part, double fraction) {
        return !part.segment.is_line() && fraction > 0 && fraction < 1;
    }

    /// How near a part comes to p at its nearest fraction.
    static Length off(const Part& part, double fraction, Point p) {
        if (within_arc(part, fraction)) return measure::abs(distance(part.centre, p) - part.radius);
        return distance(part.segment.point(fraction), p);
    }

    static double nearest_fraction(const Part& part, Point p) {
        const Segment& s = part.segment;
        double fraction = 0.5;
        if (s.is_line()) {
            const Point run = s.to - s.from;
            const Point to = p - s.from;
            fraction = (to.x * (run.x / part.length) + to.y * (run.y / part.length)) / part.length;
        } else if (p != part.centre) {
            // From the middle of the arc either way, less than half a turn.
            const double off = direction(part.centre, p).angle().radians() - part.at_middle;
            fraction = 0.5 + std::remainder(off, 2 * Angle::pi) / s.turn.radians();
        }
        return std::clamp(fraction, 0.0, 1.0);
    }

    std::vector<Part> parts_;
    Length length_;
};

}  // namespace kerfpacket::geom
