#include "sheets/layout/occupancy.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace kerfpacket::sheets {
namespace {

/// Chords leave their arc by no more than this.
constexpr Length flatness = Length::points(0.25);

/// A point as seen from the box: along it and across it.
Point in_frame(const TurnedBox& box, Point p) {
    const Point d = p - box.centre;
    const Direction up = box.along.left();
    return {d.x * box.along.x + d.y * box.along.y, d.x * up.x + d.y * up.y};
}

/// Narrows the part `from`..`to` of a segment to where start + t * step lies within +-half.
void narrow(Length start, Length step, Length half, double& from, double& to) {
    if (step.mm() == 0) {
        if (measure::abs(start) > half) to = -1;
        return;
    }
    double enter = (-half - start) / step;
    double leave = (half - start) / step;
    if (enter > leave) std::swap(enter, leave);
    from = std::max(from, enter);
    to = std::min(to, leave);
}

bool touches(const TurnedBox& box, Point a, Point b) {
    const Point p = in_frame(box, a);
    const Point q = in_frame(box, b);
    double from = 0;
    double to = 1;
    narrow(p.x, q.x - p.x, box.half_length, from, to);
    narrow(p.y, q.y - p.y, box.half_height, from, to);
    return from <= to;
}

bool edges_touch(const TurnedBox& box, const TurnedBox& other) {
    const auto corners = box.corners();
    for (std::size_t i = 0; i < corners.size(); ++i)
        if (touches(other, corners.at(i), corners.at((i + 1) % corners.size()))) return true;
    return false;
}

inline bool apart(const Rect& a, const Rect& b) {
    return a.high.x < b.low.x || b.high.x < a.low.x || a.high.y < b.low.y || b.high.y < a.low.y;
}

/// Places are tried side by side: what one touches, the next is likely to touch too.
template <class List, class Touched>
bool found_and_moved_first(List& list, Touched touched) {
    const auto found = std::find_if(list.begin(), list.end(), touched);
    if (found == list.end()) return false;
    std::swap(*found, list.front());
    return true;
}

Rect around(Point a, Point b) {
    return {{std::min(a.x, b.x), std::min(a.y, b.y)}, {std::max(a.x, b.x), std::max(a.y, b.y)}};
}

}  // namespace

std::array<Point, 4> TurnedBox::corners() const {
    const Point x = along * half_length;
    const Point y = along.left() * half_height;
    return {centre - x - y, centre + x - y, centre + x + y, centre - x + y};
}

Rect TurnedBox::bounds() const {
    const double x = std::abs(along.x), y = std::abs(along.y);
    const Point half{half_length * x + half_height * y, half_length * y + half_height * x};
    return {centre - half, centre + half};
}

void Occupancy::take(const Path& path) {
    for (const geom::Segment& s : path.segments()) {
        int pieces = 1;
        if (!s.is_line()) {
            const double half_turn = std::acos(std::max(0.0, 1 - flatness / s.radius()));
            pieces = static_cast<int>(std::ceil(std::abs(s.turn.radians()) / (2 * half_turn)));
        }
        Point a = s.from;
        for (int i = 1; i <= pieces; ++i) {
            const Point b = s.point(static_cast<double>(i) / pieces);
            chords_.push_back({a, b, around(a, b)});
            a = b;
        }
    }
}

std::variant<std::monostate, const Occupancy::Taken*, const Occupancy::Chord*> Occupancy::touched(
    const TurnedBox& box) const {
    const Rect bounds = box.bounds();
    const auto touches_box = [&](const Taken& t) {
        return !apart(bounds, t.bounds) && (edges_touch(box, t.box) || edges_touch(t.box, box));
    };
    const auto touches_chord = [&](const Chord& c) { return !apart(bounds, c.bounds) && touches(box, c.a, c.b); };
    if (!chords_.empty() && touches_chord(chords_.front())) return &chords_.front();
    if (found_and_moved_first(boxes_, touches_box)) return &boxes_.front();
    if (found_and_moved_first(chords_, touches_chord)) return &chords_.front();
    return {};
}

bool Occupancy::is_free(const TurnedBox& box) const { return touched(box).index() == 0; }

std::optional<Length> Occupancy::free_from(const TurnedBox& box) const {
    const auto found = touched(box);
    if (found.index() == 0) return std::nullopt;
    const Rect bounds = box.bounds();
    if (const auto* const taken = std::get_if<const Taken*>(&found))
        return (*taken)->box.along.y == 0 ? (*taken)->bounds.high.x : bounds.low.x;
    // The part of the chord that is as high as the box.
    const Chord& chord = *std::get<const Chord*>(found);
    double from = 0;
    double to = 1;
    narrow(chord.a.y - box.centre.y, chord.b.y - chord.a.y, box.half_height, from, to);
    const Length run = chord.b.x - chord.a.x;
    return chord.a.x + std::max(run * from, run * to);
}

bool Occupancy::clear_of_boxes(Point a, Point b) const {
    const Rect bounds = around(a, b);
    return std::none_of(boxes_.begin(), boxes_.end(),
                        [&](const Taken& t) { return !apart(bounds, t.bounds) && touches(t.box, a, b); });
}

bool Occupancy::clear_of_paths(Point a, Point b) const {
    const TurnedBox line{geom::middle(a, b), geom::direction(a, b), geom::distance(a, b) / 2, {}};
    const Rect bounds = around(a, b);
    return std::none_of(chords_.begin(), chords_.end(),
                        [&](const Chord& c) { return !apart(bounds, c.bounds) && touches(line, c.a, c.b); });
}

}  // namespace kerfpacket::sheets
