#pragma once
// A job as the carpenter wrote it: measurements, board, saw, paper, each value with its place in the file.

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <variant>
#include <vector>

#include "job/choices.h"
#include "job/diagnostics.h"
#include "job/packet.h"
#include "job/printer.h"
#include "job/values.h"
#include "measure/fraction.h"
#include "measure/length.h"

namespace kerfpacket::job {

using measure::Angle;
using measure::Length;
using measure::Unit;

/// The languages that sheets are printed in, as a job file and the command line name them.
inline constexpr std::array<std::string_view, 2> languages{"en", "es"};

struct Header {
    std::string number;
    std::string title;
    std::string revision;
    std::string date;  ///< YYYY-MM-DD, printed as given
    Unit units = Unit::inch;
    std::string language = "en";  ///< one of `languages`
    std::string also_in;          ///< a second one for the cards; empty for none
    Length tape;                  ///< what measured points may be off; 0 where the job does not say
};

/// A groove cut against the fence with no spacer, read where it meets the fence.
struct TrialGroove {
    Sourced<Length> depth;
    Sourced<Length> at_fence;             ///< 0 where the groove ends before the fence; then `ends` says where
    std::optional<Sourced<Length>> ends;  ///< how far in front of the fence the groove ends
};

struct Saw {
    Sourced<Length> blade_diameter;
    Sourced<Length> kerf;  ///< measured width of one cut
    std::optional<Sourced<Length>> travel;
    std::optional<Sourced<Angle>> mitre_limit;  ///< how far from square it cuts, to either side
    std::optional<Sourced<Length>> rear_limit;  ///< blade centre in front of the fence at its rear limit
    std::optional<TrialGroove> trial;           ///< from which the rear limit follows; never beside one
};

enum class Surface { wall, finish };      ///< which surface the measured figures describe
enum class Side { concave, convex };      ///< the side a wall board is seen from
enum class End { left, right };           ///< zero end, as seen from the room
enum class Tick { centre, left, right };  ///< what a tick marks: the blade's centre, left or right side

enum class StripOn { face, edge };  ///< where the mark strip is taped: kerf face, or over the front edge

/// A depth or a spacing: a length, or left to the program.
struct Setting {
    std::optional<Length> given;
    bool half = false;   ///< kerf_depth = "half"
    bool solve = false;  ///< "solve" was written out
    Position at;
};

/// A material that the user gives, or the user's own figures for one that is known.
struct Material {
    Sourced<std::string> name;
    double break_strain_inside = 0;             ///< kerfs inside the bend, a fraction (0.01 is 1 %)
    double break_strain_outside = 0;            ///< kerfs outside
    double softness = 1;                        ///< the factor O of the stiffness formula
    std::optional<std::array<double, 2>> peel;  ///< fracture energy in J/m2, modulus in MPa
    bool grain = false;                         ///< grain that may split as kerfs open
    std::optional<double> scatter;              ///< of its break strain, a standard deviation as a part of the mean
};

/// What break_strain_outside is when it is not given: the same as inside, or less where the board has grain.
double outside_strain(const Material& material);

/// A kerf that was cut deeper than the others by mistake.
struct TooDeep {
    Sourced<int> n;
    Sourced<Length> depth;
};

/// A piece of the same board, kerfed alike and bent until something stopped it. Measured on the plain face.
struct Coupon {
    Sourced<Length> chord;
    Sourced<Length> rise;
    Sourced<Held> held;
    Sourced<Outcome> outcome;
    std::string by;                             ///< who bent it
    std::optional<Sourced<Length>> kerf_depth;  ///< where the board's is left to the program
    std::optional<Sourced<Length>> spacing;
    bool believed = false;  ///< measured again and found to be so, though the table's board is far from it
    Position at;
};

/// One row of the shop's record: what another board of that material did.
struct Trial {
    Sourced<std::string> material;
    Sourced<Length> thickness;
    Sourced<Length> kerf;       ///< width of a cut; the saw's where the row does not say
    bool kerfs_outside = true;  ///< the side of the bend
    std::string date;           ///< YYYY-MM-DD
    Coupon tried;               ///< with its depth and spacing
};

/// The board that is bent: a liner or a wall board.
struct Board {
    Sourced<std::string> material;  ///< a name in bend::materials() or in Job::materials
    Sourced<Length> thickness;
    Sourced<Length> width;  ///< jamb depth for a liner
    Setting kerf_depth;
    Setting spacing;
    Sourced<Length> trim;  ///< extra length at each end
    End zero = End::left;
    Tick tick = Tick::centre;
    Sourced<StripOn> strip;
    Sourced<Length> scarf;  ///< 0 when not given
    std::vector<std::pair<Sourced<Length>, Sourced<Length>>> no_splice;
    std::vector<Sourced<Length>> joints;       ///< given by hand: middles of scarfs, from zero, rising
    std::optional<Sourced<Length>> max_blank;  ///< the longest that can be carried or handled
    std::vector<Sourced<Length>> kerfs;        ///< given by hand: middles, from zero, rising; then there is no spacing
    std::vector<TooDeep> too_deep;
    std::vector<Coupon> coupons;         ///< in file order
    std::vector<Sourced<Length>> plies;  ///< from the plain face, odd in number; empty where the job does not say
    /// Of a moulded wall board: heights across the width, rising from its bottom edge, and the thickness there.
    std::vector<std::pair<Sourced<Length>, Sourced<Length>>> profile;
    std::optional<Sourced<Length>> least_thickness;  ///< in place of a profile
    Position at;                                     ///< of the table's header

    bool moulded() const { return !profile.empty() || least_thickness; }
    /// Where a moulded board is thinnest; the thickness of a flat one.
    Length thinnest() const;
    /// Where that is told.
    Position thinnest_at() const;
};

/// One measured point of a curve: how far along the base line, how far the curve stands off it. For a head the base
/// line is the spring line and heights are up; for a wall the base line is a string or a straight edge and heights are
/// on the side to which the wall bulges.
struct Ordinate {
    Sourced<Length> station;
    Sourced<Length> height;
};

/// What a hand tape tells on a wall, in either unit. Common practice, no source.
inline constexpr Length usual_tape = Length::inches(1.0 / 16);

struct Ordinates {
    std::vector<Ordinate> points;  ///< stations rise from one to the next
    Length tape = usual_tape;      ///< what a point may be off: the header's, the shop's, or the usual
    std::optional<Sourced<Fit>> fit;
    /// Direction of the curve at its left and right end, against the base line, rising to the right positive. Where
    /// they are not given, the ends are free.
    std::optional<std::array<Sourced<Angle>, 2>> end_angles;
    Position at;
};

struct Casing {
    Sourced<Length> width;
    Sourced<Length> reveal;
    WallSide wall_side = WallSide::room;
    std::optional<Sourced<int>> segments;  ///< none: the fewest that fit the board or the sheet
    std::optional<Sourced<Length>> board;  ///< width of the board that segments are cut from; none: from the sheet
};

/// Ribs of the form that a board is bent round.
struct Form {
    std::optional<Sourced<Length>> step;    ///< ordinates at even steps
    std::vector<Sourced<Length>> stations;  ///< or at these distances from the left end
    std::optional<Position> freed;          ///< where it is said that the board is glued, filled and let go
    std::optional<Sourced<int>> ribs;       ///< how many are sawn, for the cut plan
    std::optional<Sourced<Length>> below;   ///< wood of a rib under its chord
    Position at;
};

/// How a full-size drawing is spread over sheets: a grid, or sheets laid along the curve, each turned to its chord.
enum class Sheets { grid, along };

/// [opening.template]: how the template is printed.
struct TemplateWish {
    std::optional<Sheets> sheets;  ///< not given: the better of the two
    bool half = false;             ///< one half, to flip about the centre line
    Position half_at;              ///< where `half` is asked for
};

/// Which edge of a splayed jamb, and toward which side of the wall.
enum class Edge { narrow, wide };
enum class Toward { room, away };

/// [opening.splay]: an opening that is wider on one side of the wall than on the other.
struct Splay {
    /// How much wider at each side, over the whole depth; or the angle from square to the wall.
    std::variant<Sourced<Length>, Sourced<Angle>> by;
    Edge measured = Edge::narrow;  ///< which edge the opening's figures describe
    Toward wide = Toward::room;    ///< where the wide edge is
    Position at;

    /// `depth`: of the jamb, square to the wall.
    Angle angle(Length depth) const;
};

struct Opening {
    Sourced<std::string> id;
    Sourced<Shape> shape;
    Sourced<Length> span;  ///< from the first to the last station for shape ordinates
    Sourced<Length> rise;  ///< half the span for a semicircular head; position line 0 where the shape needs none
    std::optional<Sourced<Length>> radius;          ///< pointed: of both sides, instead of a rise
    std::optional<Sourced<Length>> side_radius;     ///< three-centred, Tudor: of the arcs at the springs
    std::optional<Sourced<Length>> crown_radius;    ///< Tudor: of the arcs that meet at the point
    std::optional<Sourced<Length>> reverse_radius;  ///< eyebrow: of the reverse curves at the ends
    std::optional<Ordinates> ordinates;
    Surface measured_to = Surface::wall;
    std::optional<std::array<Sourced<Length>, 2>> legs;  ///< left, right; they differ where the springs do
    bool through_legs = false;                           ///< the liner runs on down the legs
    int quantity = 1;
    Board liner;
    std::optional<Splay> splay;
    std::optional<Casing> casing;
    std::optional<Form> form;
    TemplateWish wish;
    Position at;
};

/// [[wall]] of a board that climbs along its wall at one slope. The figures of the wall stay those of its plan.
struct Rake {
    /// Rise and run of one step, the run along the wall; or the slope against the level.
    std::variant<std::array<Sourced<Length>, 2>, Sourced<Angle>> slope;
    std::optional<Sourced<End>> climbs;  ///< to the right or to the left, as seen from the room; none only in a draft
    std::array<EndCut, 2> ends{EndCut::plumb, EndCut::plumb};  ///< left, right
    Position at;

    /// Rise over run.
    double steepness() const;
    bool to_the_right() const { return climbs && climbs->value == End::right; }
};

struct Wall {
    Sourced<std::string> id;
    // Either chord and rise, or radius and angle, or ordinates.
    std::optional<Sourced<Length>> chord;
    std::optional<Sourced<Length>> rise;
    std::optional<Sourced<Length>> radius;
    std::optional<Sourced<Angle>> angle;
    std::optional<Ordinates> ordinates;
    Surface measured_to = Surface::wall;
    Sourced<Side> side;
    std::array<Sourced<Length>, 2> tails;
    int quantity = 1;
    std::optional<Rake> rake;
    Board board;
    std::optional<Form> form;
    Position at;
};

/// A board or a sheet that is sold, or that lies in the rack. A sheet's grain, where it has any, runs along its length.
struct StockBoard {
    Sourced<std::string> material;
    Sourced<Length> thickness;
    Sourced<Length> width;
    Sourced<Length> length;
    std::optional<int> cents;    ///< of one, in hundredths of whatever the shop pays in
    std::optional<int> on_hand;  ///< how many lie in the rack
    Position at;

    /// One that lies in the rack and has no price is not sold.
    bool for_sale() const { return cents || !on_hand; }
};

struct Stock {
    std::vector<Sourced<Length>> lengths;
    std::optional<std::array<Length, 2>> sheet;
    std::vector<StockBoard> boards;      ///< in file order
    std::vector<StockBoard> sheets;      ///< the same
    std::optional<Length> end_trim;      ///< sawn off either end of a board before it is measured, kerf included
    std::optional<Length> least_offcut;  ///< the shortest that is kept
};

/// A value that the job file does not give.
struct Taken {
    Value value;           ///< what is taken in its place; no elements where there is none
    bool of_shop = false;  ///< the shop file gives it; else it is what is usual
};

struct Job {
    Header header;
    Saw saw;
    Printer printer;
    std::vector<Opening> openings;  ///< in file order
    std::vector<Wall> walls;
    std::vector<Material> materials;  ///< of the job file, then those of the shop file that it does not name
    std::vector<Trial> trials;  ///< of the job file, then those of the shop file; only of materials that boards are of
    Stock stock;
    PacketWish packet;
    std::vector<Taken> taken;  ///< of what should be measured or known: the whole job's, then piece by piece
    std::string fingerprint;   ///< first 8 hex digits of the SHA-256 of the normalised job
};

}  // namespace kerfpacket::job
