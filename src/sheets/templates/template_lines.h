#pragma once
// Every line of wood or wall of an arched opening, by what it is.

#include <vector>

#include "plan/lines.h"

namespace kerfpacket::sheets {

using geom::Path;
using geom::Point;
using measure::Length;

enum class Line { wall, finish, liner_end, casing_outside, casing_inside, mitre, joint, kerf_tick };

struct TemplateLine {
    Line what = Line::wall;
    Path path;
};

/// In the drawing's own place (origin mid-span on the spring line). A liner ends on its mitre where it has one, else
/// square.
std::vector<TemplateLine> template_lines(const plan::ArchLines& arch);

/// Left and right spring of the surface that was measured: there the spring line passes.
std::array<Point, 2> measured_springs(const plan::ArchLines& arch);

}  // namespace kerfpacket::sheets
