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
#include "bend/coupon.h"
#include "bend/limit.h"
#include "bend/overcut.h"
#include "bend/sensitivity.h"
#include "curve/survey.h"
#include "geom/path.h"
#include "job/job.h"
#include "job/values.h"

namespace kerfpacket::plan {

using geom::Angle;
using geom::Direction;
using geom::Length;
using geom::Path;
using geom::Point;
using geom::Rect;

enum class Kind { arch_liner, wall_board };

/// Gaps beside a kerf that differ by more are a weak link. Judgement: src/bend/NOTES.md, "Kerfs along a bend".
inline constexpr double most_gap_ratio = 1.25;

/// A sentence to print: a key of templates/<language>/cautions.toml and the values that go into it.
struct Caution {
    std::string key;
    std::vector<std::pair<std::string, std::variant<Length, double, int, std::string>>> values;
};

struct Kerf {
    int n = 0;                                  ///< from 1, counted from the zero end
    Length at;                                  ///< middle of the kerf, from zero
    Length mark;                                ///< where the tick stands: blade centre, left or right as the job says
    Length on_curve;                            ///< along the measured curve of its board, from the left
    Length spacing;                             ///< mean of the gaps beside it: the length of blank that it bends
    Angle turn;                                 ///< its share of the bend, magnitude
    bend::KerfsOn on = bend::KerfsOn::outside;  ///< the side of the bend here
    Length radius;                              ///< of the length-keeping line here; 0 where it is straight
    double utilisation = 0;                     ///< strain here over break strain
};

/// How a board of an opening ends.
struct BoardEnd {
    enum class Meets { nothing, leg, board };
    Meets meets = Meets::nothing;
    Angle mitre;        ///< of the cut, from square across the board; 0 for a square end
    Length kerf_face;   ///< from zero: where the cut meets the kerf face
    Length plain_face;  ///< from zero, carried square up to the kerf face: where it meets the plain face
};

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
    int n = 1;    ///< from the left
    Path inside;  ///< edges, left to right
    Path outside;
    Path left;  ///< ends, from the inside edge to the outside edge: a joint, or the mitre to the leg casing
    Path right;
    bool left_joint = false;  ///< joined to a segment there, not to the leg
    bool right_joint = false;
    Direction grain;      ///< along the board
    Length board_length;  ///< the least board it fits in, along and across the grain
    Length board_width;
};

/// Lines of an opening in elevation: origin in the middle of the span on the line of the springs, y up. All run from
/// left to right and are true parallels of the measured curve; at a point they meet on the mitre. They end at the
/// corners where they meet the uprights below.
struct ArchLines {
    Path wall;    ///< rough opening = back of the liner
    Path finish;  ///< seen face of the liner
    std::optional<Path> casing_inside;
    std::optional<Path> casing_outside;
    std::array<Point, 2> wall_springs;    ///< left, right: where the wall line meets its uprights
    std::array<Point, 2> finish_springs;  ///< the same of the seen face
    /// Liner cuts that are not square, from the wall line to the finished line: at a point of the arch, at the legs.
    std::vector<Path> liner_mitres;
    std::vector<Path> mitres;          ///< casing: at a point of the arch, at the legs, from inside to outside corner
    std::vector<Path> segment_joints;  ///< between casing segments, square to the curve, from inside to outside
    std::vector<CasingSegment> segments;
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
    Path finish;  ///< seen face of the board
};

/// A part of a board, or of a curve, that bends one way.
struct BendRun {
    Length from;
    Length to;
    bend::KerfsOn on = bend::KerfsOn::outside;
};

/// A rib of the bending form, at the face that lies on it: its chord along x from the origin to the right, the wood of
/// the rib below its curve. The board's left end, as seen from the room, lies at the origin.
/// The seen face lies on the rib, the kerfs up, wherever kerfs open; a board whose kerfs only close lies on it with its
/// kerf face. A board that bends both ways lies on one rib with its seen face: where its kerfs open the rib rises,
/// where they close it is hollow.
struct FormRib {
    Path curve;
    bool at_kerf_face = false;
    std::vector<BendRun> runs;      ///< along the curve, left to right
    std::vector<Point> ordinates;   ///< stations along the chord and heights, both ends included
    std::vector<Trammel> trammels;  ///< arcs whose centre a trammel reaches
    bool arcs_alone = false;        ///< the curve is made of arcs and lines
    /// For a board that is filled on it and let go: the part of the bend that it loses, for which the rib is tighter by
    /// so much; 0 for one that is fastened to its wall.
    double springs_back = 0;
};

/// A straight board down a leg, where the liner is to run through and cannot bend there.
struct LegBoard {
    job::End side = job::End::left;
    Length back;  ///< along the wall, from the floor to the cut
    Length face;  ///< along the seen face
    Angle mitre;
};

/// One way to cut the board, laid out and judged kerf by kerf.
struct Choice {
    Length depth;
    Length spacing;        ///< the largest
    Length least_spacing;  ///< the smallest
    int kerfs = 0;
    double utilisation = 0;
    bend::Verdict verdict = bend::Verdict::ok;
    bend::Limit limit = bend::Limit::strain;  ///< what governs it
};

/// How depth and spacing came about.
enum class Rule {
    given,            ///< both stand in the job file
    common_practice,  ///< half the thickness, one kerf every half inch (or what is given of them): it is ok
    thickest_web,     ///< the thickest web that is ok with kerfs at least 3/8 in apart
    closer,           ///< none was: the thickest web that is ok with kerfs down to 1/4 in apart
    least_strain,     ///< nothing is ok: the least strain there is
};

struct Settings {
    Rule rule = Rule::given;
    bend::Limit limit = bend::Limit::strain;  ///< what stops a wider spacing or a thicker web
    std::optional<Length> ok_from;    ///< where nothing is ok: the radius of the seen face from which something is
    std::optional<Choice> common;     ///< common practice, where it was not kept
    std::optional<Choice> solved;     ///< what "solve" would take, where what is given is not ok
    std::optional<Choice> shallower;  ///< the next depth less: a thicker web
    std::optional<Choice> deeper;     ///< the next depth more
    std::optional<Choice> closer;     ///< the same depth with kerfs 1/4 in apart, or the closest
    /// Where the depth that is given ends in a ply along the board: the nearest that ends in one across it.
    std::optional<Choice> cross_ply;
};

/// Least radius of the seen face that is ok, against the spacing, for one depth.
struct LimitCurve {
    Length depth;
    std::vector<std::pair<Length, Length>> points;  ///< spacing, radius
};

/// A coupon of the board, or a trial of the shop's record.
struct CouponResult {
    std::string by;
    bool trial = false;
    std::string date;  ///< of a trial
    bend::Coupon coupon;
    job::Outcome outcome = job::Outcome::cracked;
    Length depth;  ///< as the coupon was cut
    Length spacing;
    double strain = 0;            ///< where it was bent most
    double error = 0;             ///< relative, of that strain
    double table_limit = 0;       ///< break strain without the coupon
    bool counts = false;          ///< the piece's break strain is the coupon's
    double times_table = 1;       ///< its strain over the table's break strain of a board cut as it was
    std::optional<Length> hinge;  ///< above the kerf's bottom, of a coupon that closed
};

/// How many boards like this one would break, cut and bent as drawn.
struct Chance {
    double breaks = 0;  ///< between 0 and 1
    int coupons = 0;    ///< of this board, that count
    int trials = 0;     ///< of the shop's record, that count
    double lowest = 0;  ///< break strain of what counted, and its mean; 0 where nothing did
    double mean = 0;
    double load = 0;  ///< what depth and tape may add to the strain at worst, as a part of it
    /// Times the strain as drawn at which 1 in 100, 20, 4, 2 would break.
    std::array<double, 4> times{};

    bool counted() const { return coupons + trials > 0; }
};

/// A kerf that was cut too deep, and what to do.
struct DeepKerf {
    int n = 0;
    Length depth;
    bend::Overcut answer;
};

/// What the board would come to on the curve that is recommended, where the job draws another through its points.
struct OtherFit {
    job::Fit fit = job::Fit::fair;
    bend::Verdict verdict = bend::Verdict::break_likely;
    double utilisation = 0;  ///< 0 where the board cannot be laid out on that curve at all
    Length gap;              ///< how far apart the two curves are at most, at the measured points
};

struct Piece {
    std::string id;  ///< as the job gives it; with "/1", "/2" for the boards of a head that has a point
    Kind kind = Kind::arch_liner;
    int board = 1;  ///< of this opening, from the left
    int boards = 1;
    int quantity = 1;
    std::string material;
    bool own_material = false;  ///< the user's: printed under the name it is given, not one of our words
    Length thickness;
    Length width;

    bend::KerfsOn kerfs_on = bend::KerfsOn::outside;  ///< where the bend is sharpest; `runs` tell it everywhere
    std::vector<BendRun> runs;                        ///< from zero, in that order, from end to end of the bend
    bool bends_both_ways() const { return runs.size() > 1; }
    std::vector<Length> reverses() const;  ///< from zero: where the bend changes sides
    job::Side side = job::Side::concave;   ///< the side the piece is seen from; a liner is concave
    job::Surface measured_to = job::Surface::wall;
    job::Shape shape = job::Shape::segmental;  ///< openings only
    bool circular = true;                      ///< the bend is one arc: one radius holds all along
    Length measured_span;                      ///< span of the opening, or chord of the wall's curve, as measured
    Length measured_rise;
    Length measured_radius;  ///< where the measured curve is sharpest
    Angle turn;              ///< of the bend, along the seen face, magnitude; where it reverses, both ways added
    // Radii at the place that governs the verdict.
    Length wall_radius;
    Length finish_radius;  ///< of the seen (plain) face
    Length bend_radius;    ///< of the line that keeps its length

    Length kerf;
    double hinge_part = 0.5;    ///< as in bend::Cell
    std::vector<Length> plies;  ///< the same
    Length kerf_depth;
    Length spacing;        ///< the largest gap between kerfs
    Length least_spacing;  ///< the smallest; the same where the spacing is even
    bool depth_given = false;
    bool spacing_given = false;  ///< a spacing, or the kerfs one by one
    bool kerfs_given = false;
    Settings settings;
    bool even() const { return spacing == least_spacing; }
    bend::Cell cell(Length gap) const { return {thickness, kerf_depth, kerf, gap, hinge_part, plies}; }
    Length web() const { return thickness - kerf_depth; }

    Length trim;
    std::array<Length, 2> tails;  ///< straight, at the zero end, at the far end
    std::array<BoardEnd, 2> ends;
    Length blank_length;
    Length bend_start;  ///< from zero
    Length bend_end;
    Length bend_length() const { return bend_end - bend_start; }
    Length centre() const { return (bend_start + bend_end) / 2; }
    Length finish_length;  ///< along the seen face, bend and tails, without trim
    job::End zero = job::End::left;
    job::Tick tick = job::Tick::centre;
    job::StripOn strip = job::StripOn::face;
    std::vector<Kerf> kerfs;

    std::optional<Length> spacer;         ///< unknown until the saw's rear limit is
    std::optional<Length> travel_needed;  ///< the board's width, the least it can be, while the rear limit is unknown
    Length groove_ramp;
    std::optional<Length> rear_limit;      ///< given, or from the trial groove
    std::optional<Length> spacer_shorter;  ///< with `spacer_loss` less depth at the back edge
    std::optional<Length> width_reached;   ///< of the board, by the slide

    std::vector<int> weak_links;  ///< kerfs whose gaps differ by more than 1.25
    std::vector<bend::Change> sensitivity;
    bend::OvercutLimits overcut_limits;
    std::vector<DeepKerf> deep_kerfs;
    std::vector<LimitCurve> limit_curves;  ///< three depths, the shallowest first
    std::optional<CouponResult> coupon;    ///< of the board's, the weakest that counts; where none does, the first
    std::vector<CouponResult> tried;       ///< trials of the material, then all coupons of the board
    Chance chance;

    int governing = 1;      ///< number of the kerf that the verdict hangs on
    bend::Assessment bend;  ///< of the kerf that governs, with the concerns of all
    std::vector<Caution> cautions;
    std::variant<ArchLines, WallLines> lines;  ///< the same for all boards of an opening
    std::optional<job::Casing> casing;
    job::TemplateWish template_wish;
    std::optional<FormRib> form;
    std::vector<LegBoard> leg_boards;
    std::optional<curve::Survey> survey;
    std::optional<OtherFit> other_fit;
    /// Part of the bend that a board loses whose kerfs were filled stiff on a form: r of bend::stiffness_ratio.
    double springs_back = 0;
    Length moisture_move;  ///< how much longer the blank gets for 5 % more moisture; 0 where that is next to nothing
    /// Strain of the board without kerfs, T / 2R, over break strain, where it bends most.
    double solid_utilisation = 0;
};

/// An opening or a wall that cannot be made as the job asks for it: nothing of it is computed.
struct Refused {
    std::string id;
    Kind kind = Kind::arch_liner;
    std::vector<job::Value> asked;  ///< what the job file says of it
    job::Diagnostics reasons;       ///< one or more, of severity `refused`
};

struct Plan {
    job::Header header;
    job::Saw saw;
    job::Printer printer;
    std::string fingerprint;
    std::vector<Piece> pieces;       ///< openings, then walls, in file order; boards of one opening together
    std::vector<Refused> refused{};  ///< the same of what cannot be made, while there are pieces that can
    bool cautions() const;           ///< whether any piece has a caution, a verdict other than ok, or cannot be made
    int blanks() const;              ///< quantities counted
    int cuts() const;
};

/// The boards whose material is neither known nor one of the job's own `names`, told with what is near.
job::Diagnostics unknown_materials(const std::vector<job::Sourced<std::string>>& used,
                                   const std::vector<std::string>& names);

/// Computes the job. What cannot be made stands in `refused`; where nothing can, or a material is not known, there is
/// no plan but what is wrong and where the job file asks for it.
tl::expected<Plan, job::Diagnostics> make_plan(const job::Job& job);

}  // namespace kerfpacket::plan
