#pragma once
// A job as the carpenter wrote it: measurements, board, saw, paper, each value with its place in the file.

#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "job/diagnostics.h"
#include "job/media.h"
#include "measure/fraction.h"
#include "measure/length.h"

namespace kerfpacket::job {

using measure::Angle;
using measure::Length;
using measure::Unit;

/// A value and where the job file gives it (line 0: a default).
template <class T>
struct Sourced {
    T value{};
    Position at;
};

struct Header {
    std::string number;
    std::string title;
    std::string revision;
    std::string date;  ///< YYYY-MM-DD, printed as given
    Unit units = Unit::inch;
    std::string language = "en";
};

struct Saw {
    Sourced<Length> blade_diameter;
    Sourced<Length> kerf;  ///< measured width of one cut
    std::optional<Sourced<Length>> travel;
    std::optional<Sourced<Length>> rear_limit;  ///< blade centre in front of the fence at its rear limit
};

struct Printer {
    Media media;
    Length margin;
};

enum class Surface { wall, finish };      ///< which surface the measured figures describe
enum class Side { concave, convex };      ///< the side a wall board is seen from
enum class End { left, right };           ///< zero end, as seen from the room
enum class Tick { centre, left, right };  ///< what a tick marks: the blade's centre, left or right side

/// A depth or a spacing: a length, or left to the program.
struct Setting {
    std::optional<Length> given;
    bool half = false;   ///< kerf_depth = "half"
    bool solve = false;  ///< "solve" was written out
    Position at;
};

/// The board that is bent: a liner or a wall board.
struct Board {
    Sourced<std::string> material;  ///< a name in bend::materials()
    Sourced<Length> thickness;
    Sourced<Length> width;  ///< jamb depth for a liner
    Setting kerf_depth;
    Setting spacing;
    Sourced<Length> trim;  ///< extra length at each end
    End zero = End::left;
    Tick tick = Tick::centre;
    Sourced<Length> scarf;  ///< 0 when not given
    std::vector<std::pair<Sourced<Length>, Sourced<Length>>> no_splice;
    Position at;  ///< of the table's header
};

enum class Shape { segmental, semicircular };

struct Casing {
    Sourced<Length> width;
    Sourced<Length> reveal;
    int segments = 1;
};

struct Opening {
    Sourced<std::string> id;
    Sourced<Shape> shape;
    Sourced<Length> span;
    Sourced<Length> rise;  ///< half the span for a semicircular head
    Surface measured_to = Surface::wall;
    std::optional<Sourced<Length>> legs;
    int quantity = 1;
    Board liner;
    std::optional<Casing> casing;
    Position at;
};

struct Wall {
    Sourced<std::string> id;
    // Either chord and rise, or radius and angle.
    std::optional<Sourced<Length>> chord;
    std::optional<Sourced<Length>> rise;
    std::optional<Sourced<Length>> radius;
    std::optional<Sourced<Angle>> angle;
    Surface measured_to = Surface::wall;
    Sourced<Side> side;
    std::array<Sourced<Length>, 2> tails;
    int quantity = 1;
    Board board;
    Position at;
};

struct Stock {
    std::vector<Sourced<Length>> lengths;
    std::optional<std::array<Length, 2>> sheet;
};

struct Job {
    Header header;
    Saw saw;
    Printer printer;
    std::vector<Opening> openings;  ///< in file order
    std::vector<Wall> walls;
    Stock stock;
    std::string fingerprint;  ///< first 8 hex digits of the SHA-256 of the normalised job
};

}  // namespace kerfpacket::job
