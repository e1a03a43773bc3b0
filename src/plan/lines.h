#pragma once
// The lines of a piece that its templates draw: arches in elevation, walls in plan, ribs of bending forms.

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

#include "geom/path.h"
#include "job/job.h"
#include "measure/fraction.h"
#include "plan/blank.h"

namespace kerfpacket::plan {

using geom::Direction;
using geom::Path;
using geom::Point;

/// An arc that a trammel can strike: where to set its centre, and between which points.
struct Trammel {
    Point centre;
    Length radius;
    Point from;
    Point to;
};

struct KerfTick {
    Path line;      ///< from the back of the liner to the kerf's bottom
    int board = 1;  ///< of the opening, from the left
    int n = 0;      ///< the kerf's number on its board
};

/// One piece of a flat casing, sawn from a board or a sheet.
struct CasingSegment {
    int n = 1;  ///< from the left; those of the far side of the wall after those of the room's
    job::Toward side = job::Toward::room;  ///< of the wall; all lines are as seen from there
    Path inside;                           ///< edges, left to right
    Path outside;
    Path left;  ///< ends, from the inside edge to the outside edge: a joint, or the mitre to the leg casing
    Path right;
    bool left_joint = false;  ///< joined to a segment there, not to the leg
    bool right_joint = false;
    Direction grain;      ///< along the board
    Length board_length;  ///< the least board it fits in, along and across the grain
    Length board_width;

    /// The same as a tape tells them, never less: what every sheet, label and ticket says.
    Length length_to_saw(measure::Unit unit) const { return measure::up_to_tape(board_length, unit); }
    Length width_to_saw(measure::Unit unit) const { return measure::up_to_tape(board_width, unit); }
};

/// Lines of an opening in elevation, of a splayed one at the room's side of its wall: origin in the middle of the span
/// on the line of the springs, y up. All run from left to right and are true parallels of the measured curve; at a
/// point they meet on the mitre. They end at the corners where they meet the uprights below.
struct ArchLines {
    Path wall;                          ///< rough opening = back of the liner
    Path finish;                        ///< seen face of the liner
    Path measured;                      ///< one of them, but of a splayed opening measured on its far side
    std::optional<Path> casing_inside;  ///< at the room's side of the wall; none where none is there
    std::optional<Path> casing_outside;
    std::array<Point, 2> wall_springs;    ///< left, right: where the wall line meets its uprights
    std::array<Point, 2> finish_springs;  ///< the same of the seen face
    /// Liner cuts that are not square, from the wall line to the finished line: at a point of the arch, at the legs.
    std::vector<Path> liner_mitres;
    /// Of the room's casing: at a point of the arch, at the legs, from inside to outside corner.
    std::vector<Path> mitres;
    /// Between its segments, square to the curve, from inside to outside.
    std::vector<Path> segment_joints;
    std::vector<CasingSegment> segments;  ///< of both sides of the wall
    /// Upright lines of wall, finish, casing inside and casing outside, left and right of each, from the corner where
    /// they meet their curve down to an inch below the lower spring (or below the lowest corner).
    std::vector<Path> leg_lines;
    std::vector<KerfTick> kerf_ticks;
    std::optional<std::array<Length, 2>> legs;  ///< left, right
    /// Arcs of the measured surface, left to right, when it is made of arcs alone; else none.
    std::vector<Trammel> arcs;
    bool symmetric = true;

    bool springs_level() const { return measure::abs(wall_springs[0].y - wall_springs[1].y) < Length::mm(1e-6); }
    Length wall_half_span() const { return (wall_springs[1].x - wall_springs[0].x) / 2; }
    Length finish_half_span() const { return (finish_springs[1].x - finish_springs[0].x) / 2; }
};

/// Lines of a wall in plan, as curve::Course says, tails included.
struct WallLines {
    Path wall;
    Path finish;                  ///< seen face of the board
    std::array<Length, 2> tails;  ///< of them the straight parts, left and right
};

/// A rib of the bending form, at the face that lies on it: its chord along x from the origin to the right, the wood of
/// the rib below its curve. The board's left end, as seen from the room, lies at the origin.
/// The seen face lies on the rib, the kerfs up, wherever kerfs open; a board whose kerfs only close lies on it with its
/// kerf face. A board that bends both ways lies on one rib with its seen face: where its kerfs open the rib rises,
/// where they close it is hollow.
struct FormRib {
    Path curve;
    bool at_kerf_face = false;
    std::vector<BendRun> runs;          ///< along the curve, left to right
    std::vector<Point> ordinates;       ///< stations along the chord and heights, both ends included
    std::vector<Trammel> trammels;      ///< arcs whose centre a trammel reaches
    std::vector<Trammel> beyond_reach;  ///< arcs of a longer radius
    bool arcs_alone = false;            ///< the curve is made of arcs and lines
    /// For a board that is filled on it and let go: the part of the bend that it loses, for which the rib is tighter by
    /// so much; 0 for one that is fastened to its wall.
    double springs_back = 0;
    int ribs = 0;    ///< how many are sawn; 0 where the job does not say
    Length below{};  ///< wood left under the chord, or under the lowest place of a hollow
    Point stock{};   ///< what one is sawn out of, along the chord and across it
};

/// A straight board down a leg, where the liner is to run through and cannot bend there, or where it splays; then
/// lengths are those at its narrow edge.
struct LegBoard {
    job::End side = job::End::left;
    Length back;  ///< along the wall, from the floor to the cut
    Length face;  ///< along the seen face
    Angle mitre;
    Length climb{};  ///< of a splayed one: how much higher its cut stands at the wide edge
    /// Of a splayed one: lengths along the seen face at even steps across, from the narrow edge to the wide one, as
    /// sawn.
    std::vector<Length> across{};

    Length longest() const { return std::max(back, face) + std::max(climb, Length()); }
};

}  // namespace kerfpacket::plan
