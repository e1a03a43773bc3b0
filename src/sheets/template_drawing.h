#pragma once
// The lines and figures of an arch template at full size, before it is cut into tiles. What crosses from one tile to
// the next is settled here, once, so that both pages show the same.

#include <string>
#include <vector>

#include "plan/plan.h"
#include "sheets/labels.h"
#include "sheets/tape.h"
#include "sheets/tiling.h"

namespace kerfpacket::sheets {

enum class Line { wall, finish, liner_end, casing_outside, casing_inside, mitre, joint, kerf_tick };

struct TemplateLine {
    Line what = Line::wall;
    Path path;
};

/// Every line of wood or wall, in the drawing's own place (origin mid-span on the spring line).
std::vector<TemplateLine> template_lines(const plan::ArchLines& arch);
std::vector<Path> paths_of(const std::vector<TemplateLine>& lines);

/// Draws a line, or a part of it, the way its kind is drawn at full size.
void draw_template_line(Pen& pen, Line what, Path path);

/// The line that ordinates are measured to: the casing's outside edge, or the wall without casing.
const Path& ordinate_line(const plan::ArchLines& arch);

struct Ordinate {
    Length from_centre;        ///< right positive
    Length height;             ///< above the spring line
    std::vector<Path> pieces;  ///< the upright, open where a kerf's number stands
};

/// Steps of the ordinates: 3 in, 75 mm.
Length ordinate_step(const Tape& tape);

/// A kerf's number, outside the wall line, turned with its tick.
struct Numeral {
    Block block;
    Point centre;
    Direction along;
};

struct TemplateDrawing {
    std::vector<TemplateLine> lines;
    std::vector<Numeral> numerals;
    std::vector<Ordinate> ordinates;
    std::vector<Path> centre_line;
    Path spring_line;
};

TemplateDrawing template_drawing(const Pen& pen, const plan::Piece& piece, const Tape& tape, const Tiling& tiling);

/// Corners and mid-sides of a cell, where ringed crosses stand.
std::vector<Point> cross_points(const Rect& cell);
inline constexpr Length ring_radius = Length::points(6.5);

}  // namespace kerfpacket::sheets
