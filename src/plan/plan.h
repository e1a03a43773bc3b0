#pragma once
// The whole job computed: pieces, kerf positions, verdicts, lines to draw. Sheets only lay this out.

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <variant>
#include <vector>

#include <tl/expected.hpp>

#include "bend/assess.h"
#include "geom/path.h"
#include "job/job.h"

namespace kerfpacket::plan {

using geom::Angle;
using geom::Length;
using geom::Path;
using geom::Point;

enum class Kind { arch_liner, wall_board };

/// A sentence to print: a key of templates/<language>/cautions.toml and the values that go into it.
struct Caution {
    std::string key;
    std::vector<std::pair<std::string, std::variant<Length, double, int, std::string>>> values;
};

struct Kerf {
    int n = 0;    ///< from 1, counted from the zero end
    Length at;    ///< middle of the kerf, from zero
    Length mark;  ///< where the tick stands: blade centre, left or right as the job says
};

/// Lines of an opening in elevation: origin in the middle of the span on the spring line, y up. The arch lines run
/// from left to right. Wall and finish are true parallels over the whole turn; the casing lines have the same centre
/// but end at the corners where they meet the leg casing, so they turn a little more or less.
struct ArchLines {
    Path wall;    ///< rough opening = back of the liner
    Path finish;  ///< seen face of the liner
    std::optional<Path> casing_inside;
    std::optional<Path> casing_outside;
    Length wall_half_span;             ///< on the spring line
    Length finish_half_span;           ///< face of the leg liners from the centre line
    std::vector<Path> mitres;          ///< where arch and leg casing meet: from inside corner to outside corner
    std::vector<Path> segment_joints;  ///< between casing segments, radial, from inside to outside
    /// Upright lines of wall, finish, casing inside and casing outside, left and right of each, from the corner where
    /// they meet their arc down to an inch below the spring line (or below the finish corner, where that is lower).
    std::vector<Path> leg_lines;
    std::vector<Path> kerf_ticks;  ///< one a kerf of the blank, from the back of the liner to the kerf's bottom
    std::optional<Length> legs;
};

/// Lines of a wall in plan, as curve::Curve says, tails included.
struct WallLines {
    Path wall;
    Path finish;  ///< seen face of the board
};

struct Piece {
    std::string id;
    Kind kind = Kind::arch_liner;
    int quantity = 1;
    std::string material;
    Length thickness;
    Length width;

    bend::KerfsOn kerfs_on = bend::KerfsOn::outside;
    job::Side side = job::Side::concave;  ///< the side the piece is seen from; a liner is concave
    job::Surface measured_to = job::Surface::wall;
    job::Shape shape = job::Shape::segmental;  ///< openings only
    Length measured_span;                      ///< span of the opening, or chord of the wall's curve, as measured
    Length measured_rise;
    Length measured_radius;
    Angle turn;  ///< of the whole bend, magnitude
    Length wall_radius;
    Length finish_radius;  ///< of the seen (plain) face
    Length bend_radius;    ///< of the line that keeps its length

    Length kerf;
    Length kerf_depth;
    Length spacing;
    bool depth_given = false;
    bool spacing_given = false;
    Length web() const { return thickness - kerf_depth; }

    Length trim;
    std::array<Length, 2> tails;  ///< at the zero end, at the far end
    Length blank_length;
    Length bend_start;  ///< from zero
    Length bend_end;
    Length bend_length() const { return bend_end - bend_start; }
    Length centre() const { return (bend_start + bend_end) / 2; }
    Length finish_length;  ///< along the seen face, bend and tails, without trim
    job::End zero = job::End::left;
    job::Tick tick = job::Tick::centre;
    std::vector<Kerf> kerfs;

    std::optional<Length> spacer;         ///< unknown until the saw's rear limit is
    std::optional<Length> travel_needed;  ///< the board's width, the least it can be, while the rear limit is unknown
    Length groove_ramp;

    bend::Assessment bend;
    std::vector<Caution> cautions;
    std::variant<ArchLines, WallLines> lines;
    std::optional<job::Casing> casing;
};

struct Plan {
    job::Header header;
    job::Saw saw;
    job::Printer printer;
    std::string fingerprint;
    std::vector<Piece> pieces;  ///< openings, then walls, in file order
    bool cautions() const;      ///< whether any piece has a caution or a verdict other than ok
    int blanks() const;         ///< quantities counted
    int cuts() const;
};

/// Computes the job, or says what cannot be done and where the job file asks for it.
tl::expected<Plan, job::Diagnostics> make_plan(const job::Job& job);

}  // namespace kerfpacket::plan
