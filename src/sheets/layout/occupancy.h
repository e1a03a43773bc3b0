#pragma once
// What is drawn already, so that labels can keep clear of it and of each other.

#include <array>
#include <optional>
#include <variant>
#include <vector>

#include "geom/path.h"

namespace kerfpacket::sheets {

using geom::Direction;
using geom::Path;
using geom::Point;
using geom::Rect;
using measure::Length;

/// The area of a label, turned with it.
struct TurnedBox {
    Point centre;
    Direction along;
    Length half_length;  ///< along
    Length half_height;  ///< across

    std::array<Point, 4> corners() const;
    Rect bounds() const;
};

inline TurnedBox level_box(const Rect& r) {
    return {geom::middle(r.low, r.high), {1, 0}, r.width() / 2, r.height() / 2};
}

class Occupancy {
public:
    void take(const TurnedBox& box) { boxes_.push_back({box, box.bounds()}); }
    void take(const Path& path);

    /// Whether the box touches nothing that was taken.
    bool is_free(const TurnedBox& box) const;
    /// The same asked of a level box that is to move to the right: nothing where it is free, else how far its left edge
    /// must come at the least.
    std::optional<Length> free_from(const TurnedBox& box) const;
    /// Whether a straight line touches no box, or no path, that was taken.
    bool clear_of_boxes(Point a, Point b) const;
    bool clear_of_paths(Point a, Point b) const;

private:
    struct Taken {
        TurnedBox box;
        Rect bounds;
    };
    struct Chord {
        Point a;
        Point b;
        Rect bounds;
    };
    /// What the box touches, as it was found first.
    std::variant<std::monostate, const Taken*, const Chord*> touched(const TurnedBox& box) const;

    // In no order: what was touched last comes first.
    mutable std::vector<Taken> boxes_;
    mutable std::vector<Chord> chords_;
};

}  // namespace kerfpacket::sheets
