#pragma once
// The template of an arched opening as a drawing: what each line is, kerf numbers, ordinates.

#include "sheets/templates/arch_opening.h"
#include "sheets/templates/template_drawing.h"
#include "sheets/templates/template_ways.h"

namespace kerfpacket::sheets {

/// Lines with their look, by which the tiles are cut.
std::vector<DrawnLine> drawn_lines(const ArchOpening& arch, const fonts::Style& style);

/// The lines of the template or of its half, what sheets along them follow, and the places it is judged by.
TemplateShape arch_shape(const ArchOpening& arch, const fonts::Style& style);

TemplateDrawing arch_drawing(const Pen& pen, const ArchOpening& arch, const Tape& tape, const Tiling& tiling);

}  // namespace kerfpacket::sheets
