#pragma once
// What the job asks of one board, in one form for liners and wall boards.

#include <array>
#include <cmath>
#include <memory>
#include <string>
#include <vector>

#include "curve/outline.h"
#include "plan/piece.h"

namespace kerfpacket::plan {

/// Distances of the two faces of the board to the left of the measured curve.
struct Faces {
    Length wall;    ///< the kerf face: back of a liner, back of a wall board
    Length finish;  ///< the plain face, which is seen
};
/// The seen face stands a thickness nearer the room, which is on the right of travel.
Faces faces(job::Surface measured_to, Length thickness);

/// What the splay of a jamb makes of its bend: the soffit leans outward by the same angle everywhere, so that a plane
/// of the wall cuts the board askew and the bend about the soffit's straight lines is opener than the edge's own.
/// Source: src/bend/NOTES.md, "Splayed jambs".
struct Opened {
    Angle alpha;  ///< from square to the wall
    Length
        narrow;   ///< of the narrow edge, to the left of the measured curve: 0, or less where the wide one is measured
    Length room;  ///< the same of the edge at the room
    Length away;  ///< and of the one at the far side of the wall

    double cosine() const { return std::cos(alpha.radians()); }
    /// The faces where they meet a plane of the wall, of which the measured edge's parallel is so far to the left.
    Faces in_plane(const Faces& square, Length edge) const {
        return {square.wall / cosine() + edge, square.finish / cosine() + edge};
    }
};

/// The faces of a board where a plane of the wall cuts them at one of its edges; of one square to the wall as they are.
Faces in_plane(const Faces& square, const std::optional<Opened>& splay, Length Opened::*edge);

/// None of a jamb that is square to the wall.
std::optional<Opened> opened(const job::Opening& opening);
/// The faces of an opening's liner where they meet the room's side of its wall.
Faces room_faces(const job::Opening& opening);
/// The same at the far side of the wall.
Faces away_faces(const job::Opening& opening);
/// The same at the narrow edge of a splayed one; else the same.
Faces narrow_faces(const job::Opening& opening);
/// Of a splayed liner: as it is sawn, edges square, so that both bevels come out of it.
Length sawn_width(const job::Opening& opening);
/// Its faces so far out from the narrow edge along a straight line of it, and at even steps across it as it is sawn.
Faces faces_out(const job::Opening& opening, Length out);
std::vector<Faces> faces_across(const job::Opening& opening);
/// How much wider a splayed opening is at each side of its wide edge; 0 of one square to the wall.
Length splayed_side(const job::Opening& opening);

/// Straighter than a radius of 1 km bends nothing.
inline constexpr double no_curvature = 1e-6;

/// Sign of a radius's growth from the plain face to the line that keeps its length.
inline double outward(bend::KerfsOn on) { return on == bend::KerfsOn::outside ? 1 : -1; }

/// How a board ends at one end of its curve, in distances along the measured curve.
struct CurveEnd {
    BoardEnd::Meets meets = BoardEnd::Meets::nothing;
    Angle mitre;
    Length wall;    ///< where the kerf face ends
    Length finish;  ///< where the plain face ends
    std::optional<LegCut>
        leg_cut{};  ///< of a splayed board, where it meets a leg at a corner: along the measured curve
};

/// Where a board bends most to one side, as a radius of the measured curve.
struct TightSpot {
    bend::KerfsOn on = bend::KerfsOn::outside;
    Length measured_radius;
    std::optional<Opened> splay{};

    /// About which the plain face of a board of that thickness bends.
    Length plain_radius(job::Surface measured_to, Length thickness) const;
    /// The same of the line that keeps its length, so far below the plain face.
    Length line_radius(job::Surface measured_to, Length thickness, Length below_face) const;
    /// The measured radius at which the plain face of a board of that thickness bends about a radius.
    Length measured_for(Length plain_radius, job::Surface measured_to, Length thickness) const;
};
/// How the curve of a board bends: what neither its cut nor its thickness changes.
struct Bend {
    curve::Curve curve;     ///< between the ends of its wood, on either face
    bool circular = false;  ///< one arc and nothing else
    /// Left to right, in distances along the measured curve, the kerfs on its left. A turn that the tape cannot have
    /// told is no run of its own. These alone say on which side the kerfs are; strips, cards, sheets and forms ask what
    /// they told.
    std::vector<BendRun> runs{};
    std::vector<TightSpot> spots{};  ///< one for each way the board bends, the tightest first
};

/// A board and the curve it follows, wherever the job file gives them.
struct Request {
    std::string id;
    Kind kind = Kind::arch_liner;
    int board = 1;
    int boards = 1;
    int quantity = 1;
    const job::Board* wanted = nullptr;
    curve::Curve curve;              ///< of the measured surface, left to right
    std::array<CurveEnd, 2> ends{};  ///< left, right
    std::array<Length, 2> tails{};   ///< left, right, as seen from the room
    job::Surface measured_to = job::Surface::wall;
    job::Side side = job::Side::concave;
    job::Shape shape = job::Shape::segmental;
    Length span;  ///< or the chord
    Length rise;
    const job::Rake* climbs = nullptr;   ///< of a board that climbs its wall
    Length tape;                         ///< what the points of a measured curve may be off; 0 where the curve is told
    std::optional<Opened> splay{};       ///< of the liner of a splayed jamb
    std::shared_ptr<const Bend> bend{};  ///< of all that, by `with_bend`; many cuts of the board are laid out on it

    /// Distances of the two faces to the left of the measured curve; of a splayed board at its narrow edge.
    Faces faces() const;
    /// Of the measured curve, the line that keeps the board's length, so far below its plain face.
    Length line_left(Length below_face) const;
    /// That line as it bends: a curve of its length, with the radii about which the board turns.
    curve::Curve bent_line(Length below_face) const;
    /// How much larger the radius of that line is than the plain face's, with kerfs outside the bend.
    Length deeper(Length below_face) const { return splay ? below_face / std::pow(splay->cosine(), 2) : below_face; }

    /// At which angle the bend crosses a grain that runs along the board: the slope on the wall, within a degree or so
    /// of where the kerfs stand; 0 of a level board.
    Angle across_grain() const { return Angle::radians(climbs == nullptr ? 0 : std::atan(climbs->steepness())); }
    /// The same asked of another board, which has to outlive it.
    Request with(const job::Board& another) const {
        Request other = *this;
        other.wanted = &another;
        return other;
    }

    /// Distances along the curve between which there is wood of the board's bend, on either face.
    curve::Extent extent() const;
};

/// The request with its bend, found anew.
Request with_bend(Request wanted);

}  // namespace kerfpacket::plan
