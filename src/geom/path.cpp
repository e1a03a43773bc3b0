#include "geom/path.h"

#include <algorithm>
#include <cmath>

#include "geom/enters.h"
#include "measure/require.h"

namespace kerfpacket::geom {

Path::Path(std::vector<Segment> segments, bool closed) : segments_(std::move(segments)), closed_(closed) {}

Path Path::polyline(const std::vector<Point>& points, bool closed) {
    std::vector<Segment> segments;
    segments.reserve(points.size());
    for (std::size_t i = 0; i + 1 < points.size(); ++i) segments.push_back({points[i], points[i + 1], {}});
    if (closed && points.size() > 2) segments.push_back({points.back(), points.front(), {}});
    return Path(std::move(segments), closed);
}

Path Path::rectangle(const Rect& r) {
    return polyline({r.low, {r.high.x, r.low.y}, r.high, {r.low.x, r.high.y}}, true);
}

Path Path::circle(Point centre, Length radius) {
    const Point east{centre.x + radius, centre.y};
    const Point west{centre.x - radius, centre.y};
    return Path({{east, west, Angle::degrees(180)}, {west, east, Angle::degrees(180)}}, true);
}

Length Path::length() const {
    Length total;
    for (const Segment& s : segments_) total += s.length();
    return total;
}

Angle Path::turn() const {
    Angle total;
    for (const Segment& s : segments_) total = total + s.turn;
    return total;
}

namespace {

/// The segment at a distance along the path and the fraction within it.
std::pair<const Segment*, double> locate(const std::vector<Segment>& segments, Length distance) {
    measure::require(!segments.empty(), "a path that is asked for a position has segments");
    for (const Segment& s : segments) {
        const Length length = s.length();
        if (distance <= length || &s == &segments.back())
            return {&s, length.mm() > 0 ? std::clamp(distance / length, 0.0, 1.0) : 0.0};
        distance -= length;
    }
    return {&segments.back(), 1.0};
}

template <class Change>
Path changed(const Path& path, Change change) {
    std::vector<Segment> segments = path.segments();
    for (Segment& s : segments) s = change(s);
    return Path(std::move(segments), path.closed());
}

}  // namespace

Station Path::at(Length distance) const {
    const auto [segment, fraction] = locate(segments_, distance);
    return {segment->point(fraction), segment->direction_at(fraction)};
}

double Path::curvature_at(Length distance) const {
    const auto [segment, fraction] = locate(segments_, distance);
    return segment->turn.radians() / segment->length().mm();
}

Rect Path::bounds() const {
    measure::require(!segments_.empty(), "a path that is asked for its bounds has segments");
    Rect box = segments_.front().bounds();
    for (const Segment& s : segments_) box = united(box, s.bounds());
    return box;
}

Path Path::offset_left(Length by) const {
    return changed(*this, [by](const Segment& s) {
        measure::require(s.turn.radians() * by.mm() <= 0 || measure::abs(by) / s.radius() < 1,
                         "an offset is smaller than the radius it shrinks");
        return Segment{s.from + s.start_direction().left() * by, s.to + s.end_direction().left() * by, s.turn};
    });
}

Path Path::reversed() const {
    std::vector<Segment> segments(segments_.rbegin(), segments_.rend());
    for (Segment& s : segments) s = s.reversed();
    return Path(std::move(segments), closed_);
}

Path Path::mirrored_left_right() const {
    return changed(*this, [](const Segment& s) { return s.mirrored_left_right(); });
}

Path Path::mirrored_up_down() const {
    return changed(*this, [](const Segment& s) { return s.mirrored_up_down(); });
}

Path Path::moved(Point by) const {
    return changed(*this, [by](const Segment& s) { return Segment{s.from + by, s.to + by, s.turn}; });
}

Path Path::turned(Angle by) const {
    return changed(*this, [by](const Segment& s) {
        return Segment{geom::turned(s.from, by), geom::turned(s.to, by), s.turn};
    });
}

namespace {

bool apart(const Rect& a, const Rect& b) {
    return a.high.x < b.low.x || b.high.x < a.low.x || a.high.y < b.low.y || b.high.y < a.low.y;
}

/// Bounds of a segment, or for a flat arc somewhat more, found without its centre: it leaves its chord by less than
/// chord / 2 * tan(turn / 4), whose tangent is under 1.06 times its angle here.
Rect loose_bounds(const Segment& s) {
    if (std::abs(s.turn.radians()) > 1.5) return s.bounds();
    const Rect chord = united({s.from, s.from}, {s.to, s.to});
    return chord.grown((chord.width() + chord.height()) * (std::abs(s.turn.radians()) * (1.06 / 8)));
}

bool within(const Rect& inner, const Rect& outer) { return outer.contains(inner.low) && outer.contains(inner.high); }

/// The parts of a segment between the lines of a window's sides, and whether the window shows them, until `look` has
/// seen enough. It lies within `bounds`.
template <class Look>
void each_part(const Segment& s, const Rect& bounds, const Rect& window, Look look) {
    const Rect near = bounds.grown(Length::mm(1e-3));
    std::vector<double> cuts{0, 1};
    const auto cut = [&](Point corner, Direction along) {
        for (const double f : crossings(s, corner, along)) cuts.push_back(f);
    };
    for (const Point corner : {window.low, window.high}) {
        if (near.low.y <= corner.y && corner.y <= near.high.y) cut(corner, {1, 0});
        if (near.low.x <= corner.x && corner.x <= near.high.x) cut(corner, {0, 1});
    }
    std::sort(cuts.begin(), cuts.end());
    for (std::size_t i = 0; i + 1 < cuts.size(); ++i) {
        if (cuts[i + 1] - cuts[i] < 1e-12) continue;
        if (!look(cuts[i], cuts[i + 1], window.contains(s.point((cuts[i] + cuts[i + 1]) / 2)))) return;
    }
}

}  // namespace

std::vector<Path> clip(const Path& path, const Rect& window) {
    std::vector<std::vector<Segment>> runs;
    bool open = false;
    const auto keep = [&](const Segment& piece) {
        if (!open) runs.emplace_back();
        runs.back().push_back(piece);
        open = true;
    };
    for (const Segment& s : path.segments()) {
        const Rect loose = loose_bounds(s);
        if (apart(loose, window)) {
            open = false;
            continue;
        }
        if (within(loose, window) || within(s.bounds(), window)) {
            keep(s);
            continue;
        }
        each_part(s, loose, window, [&](double from, double to, bool shown) {
            if (shown) keep(s.part(from, to));
            else open = false;
            return true;
        });
    }
    std::vector<Path> paths;
    paths.reserve(runs.size());
    for (auto& run : runs) paths.emplace_back(std::move(run));
    return paths;
}

bool enters(const Path& path, const Rect& window) {
    const std::vector<Segment>& all = path.segments();
    const Rect well_inside = window.grown(Length::mm(-1e-6));
    if (std::any_of(all.begin(), all.end(), [&](const Segment& s) { return well_inside.contains(s.from); }))
        return true;
    return std::any_of(all.begin(), all.end(), [&](const Segment& s) {
        const Rect loose = loose_bounds(s);
        if (apart(loose, window)) return false;
        if (within(loose, window) || within(s.bounds(), window)) return true;
        bool any = false;
        each_part(s, loose, window, [&](double, double, bool shown) {
            any = shown;
            return !shown;
        });
        return any;
    });
}

std::optional<Length> height_over(const Path& curve, Length x) {
    std::optional<Length> highest;
    const auto look_at = [&](Length height) { highest = highest ? std::max(*highest, height) : height; };
    for (const Segment& s : curve.segments()) {
        for (const double f : crossings(s, {x, {}}, {0, 1})) look_at(s.point(f).y);
    }
    return highest;
}

}  // namespace kerfpacket::geom
