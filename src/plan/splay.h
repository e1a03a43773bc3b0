#pragma once
// The liner of a splayed jamb: a surface that leans outward by the same angle everywhere, and the flat blank that bends
// onto it. Its straight lines are square to both edges; kerfs lie along them. Source: src/bend/NOTES.md, "Splayed
// jambs".

#include <array>
#include <cmath>
#include <optional>
#include <vector>

#include "curve/curve.h"
#include "plan/blank.h"

namespace kerfpacket::plan {

using geom::Path;
using geom::Point;
using geom::Rect;

/// Where a board is cut that meets its leg at a corner: both faces of both boards end on the mitre of the head's
/// parallels. Places at even steps across, from the narrow edge to the wide one, as sawn.
struct LegCut {
    std::vector<Length> seen;
    std::vector<Length> kerf;  ///< on the kerf face
};

struct Splay {
    Angle alpha;  ///< of the soffit, from square to the wall
    bool wide_at_room = true;
    bool narrow_measured = true;  ///< the opening's figures are those of its narrow edge
    Length depth;                 ///< of the jamb, square to the wall
    Length thickness;             ///< of the board
    Length below_face;            ///< of the line that keeps its length, from the plain face
    /// That line at the narrow edge, in elevation, from the blank's left end to its right, as seen from the room.
    curve::Curve line;
    std::array<Length, 2> trims{};  ///< of it, left and right
    /// Left and right, its places along `line`; none where the board ends on a straight line.
    std::array<std::optional<LegCut>, 2> leg_cuts{};

    /// The same of a part of its blank, between two places from zero.
    Splay part(const Blank& whole, Length from, Length to) const;

    double sine() const { return std::sin(alpha.radians()); }
    double cosine() const { return std::cos(alpha.radians()); }
    double tangent() const { return std::tan(alpha.radians()); }
    /// How much wider the opening is at each side.
    Length side() const { return depth * tangent(); }
    /// The seen face from edge to edge, along a kerf.
    Length slant() const { return depth / cosine(); }
    /// How much one face of the board stands out over the other at a bevelled edge.
    Length bevel() const { return thickness * tangent(); }
    /// As the blank is sawn, edges square: both bevels come out of it.
    Length sawn_width() const { return slant() + bevel(); }
    /// Along a kerf from the line, toward the wide side: where the edges are sawn.
    Length narrow_edge() const { return below_face * -tangent(); }
    Length wide_edge() const { return narrow_edge() + sawn_width(); }
};

/// The blank as it lies flat, kerf face up, its wide edge up: x to the right of whoever stands at its narrow edge.
/// Places along it are counted along the line that keeps its length, places across it from there to the wide side.
class FlatBlank {
public:
    FlatBlank(const Splay& splay, const Blank& blank);

    /// Whether zero is at the left as it lies: where the wide edge is at the room, left and right are the other way
    /// round as seen from the room.
    bool zero_at_left() const { return flipped_ != (blank_.zero == job::End::left); }
    Point at(Length from_zero, Length across) const;
    /// From the narrow edge to the wide one, as sawn.
    Path kerf(Length from_zero) const;
    /// The line so far across, from end to end, left to right.
    Path along(Length across) const;
    Path narrow() const { return along(splay_.narrow_edge()); }
    Path wide() const { return along(splay_.wide_edge()); }
    /// How far from the zero end a tape along the line so far across reads at a place.
    Length read(Length from_zero, Length across) const;
    /// Round the whole.
    Path outline() const;
    /// Where an end (0: zero) meets its leg, from the narrow edge to the wide one, on the seen face and on the kerf
    /// face; none where it ends on a straight line.
    struct EndCut {
        Path seen;
        Path kerf;
    };
    std::optional<EndCut> leg_cut(std::size_t end) const;
    /// Of the line, along which it is counted; 0 where it is straight.
    Length radius(Length from_zero) const;
    /// What it turns from end to end.
    Angle turn() const { return edge_.turn(); }

private:
    Length from_left(Length from_zero) const;
    Path across_at(const std::vector<Length>& along_line) const;

    const Splay& splay_;
    const Blank& blank_;
    bool flipped_;
    curve::Curve edge_;
};

}  // namespace kerfpacket::plan
