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
        // The part whose middle is nearest rules nearly all others out.
        const auto likely = std::min_element(parts_.begin(), parts_.end(), [&](const Part& a, const Part& b) {
            return square(p - a.middle) < square(p - b.middle);
        });
        auto [least, best] = nearest_on(*likely, p);
        for (const Part& part : parts_) {
            const Length reach = least + part.length / 2;
            if (&part == &*likely || square(p - part.middle) >= reach.mm() * reach.mm()) continue;
            const auto [distance, at] = nearest_on(part, p);
            if (distance >= least) continue;
            least = distance;
            best = at;
        }
        return best;
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

    static double square(Point p) { return p.x.mm() * p.x.mm() + p.y.mm() * p.y.mm(); }

    /// How near a part comes to p, and where along the path.
    static std::pair<Length, Length> nearest_on(const Part& part, Point p) {
        const double fraction = nearest_fraction(part, p);
        const bool within_arc = !part.segment.is_line() && fraction > 0 && fraction < 1;
        const Length off = within_arc ? measure::abs(distance(part.centre, p) - part.radius)
                                      : distance(part.segment.point(fraction), p);
        return {off, part.start + part.length * fraction};
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
