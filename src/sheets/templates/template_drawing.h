#pragma once
// A drawing at full size before it is cut into tiles, as data: what stands where and what it is called. What crosses
// from one tile to the next is settled here, once, so that both pages show the same.

#include <optional>
#include <string>
#include <vector>

#include "sheets/layout/labels.h"
#include "sheets/templates/tiling.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// A line and how it is drawn at full size.
struct DrawnLine {
    Path path;
    Role role = Role::outline;
    Length width;
    Dash dash = Dash::solid;
    /// On the assembly map; 0 where the map leaves it out.
    Length width_on_map{};
};

/// Words or a number that stand fast in the drawing, turned with it.
struct Figure {
    Block block;
    Point centre;
    Direction along;
    Role role = Role::numeral;
};

/// An upright that a curve is set out by, from the base line up.
struct Ordinate {
    Point top;
    std::vector<Path> pieces;  ///< the upright, open where a figure stands
    Block label;               ///< above the curve, or beside the upright
};

/// A way to stand beside a line.
struct Stand {
    Beside side = Beside::left;
    Length gap;
};

/// What a line is called, said on every tile that shows it: at the first line, and the first stand, that has room.
struct Name {
    struct Choice {
        Path path;
        Block block;
        std::vector<Stand> stands;
    };
    std::vector<Choice> choices;
    /// Where no stand is free, the last choice stands off with a leader if its line shows at least this much.
    std::optional<Length> leader_from = Length::inches(0.75);
    std::optional<Choice> last_resort = std::nullopt;  ///< where no leader finds room either
};

/// A sentence of the note that a tile carries, in the parts that a narrow block breaks it into.
struct NoteRow {
    std::vector<std::string> parts;
    Type type;
    bool lesser = false;      ///< left out first where a tile is crowded
    bool first_only = false;  ///< said on the first tile alone
};

struct TemplateDrawing {
    std::vector<DrawnLine> lines;  ///< wood and wall: they decide which tiles are printed
    std::vector<Figure> figures;
    std::vector<Ordinate> ordinates;
    std::vector<Path> centre_line;  ///< open where a figure stands
    std::optional<Length> centre;   ///< where it stands
    std::vector<Path> base_lines;   ///< spring line, chord of a rib
    std::vector<Name> names;        ///< in the order in which they look for room
    std::vector<NoteRow> note;
    std::optional<Path> grain;        ///< a line along the middle of a piece, on which every tile shows its grain
    std::vector<Point> flip_crosses;  ///< of a half, on the line that it is flipped about
    bool joints_named = false;        ///< its figures say what the crosses between two sheets are

    /// Turned about the origin; its `centre` is told no more.
    TemplateDrawing turned(Angle by) const;
};

std::vector<Path> paths_of(const std::vector<DrawnLine>& lines);

/// The parts of the upright at x from `foot` to `top` that cross no figure.
std::vector<Path> open_upright(Length x, Length foot, Length top, const std::vector<Figure>& figures);

/// A sentence broken between words into lines no wider than `width`.
std::vector<std::string> broken(const Pen& pen, const std::string& text, const Type& type, Length width);

/// The parts of a straight line outside these rectangles.
std::vector<Path> open_line(const Path& line, const std::vector<Rect>& gaps);

inline constexpr Length ring_radius = Length::points(6.5);
/// How far an upright reaches beyond its curve.
inline constexpr Length beyond_curve = Length::points(8);

}  // namespace kerfpacket::sheets
