#pragma once
// The template of an arched opening as a drawing: what each line is, kerf numbers, ordinates.

#include "plan/plan.h"
#include "sheets/templates/template_drawing.h"
#include "sheets/templates/template_lines.h"
#include "sheets/templates/template_ways.h"

namespace kerfpacket::sheets {

/// An opening and the boards that line it, left to right: one, or two where the head has a point.
struct ArchOpening {
    explicit ArchOpening(const plan::Plan& plan, const plan::Piece& first);

    std::string id;  ///< of the opening, without the number of a board
    std::vector<const plan::Piece*> boards;
    const plan::Piece& piece() const { return *boards.front(); }
    bool half() const { return piece().template_wish.half; }
    const plan::ArchLines& lines() const { return std::get<plan::ArchLines>(piece().lines); }
    /// Level from which heights are told: of the lower spring.
    Length spring_level() const;
    /// The line that ordinates are measured to: the casing's outside edge, or the wall without casing.
    const Path& ordinate_line() const;
};

/// Lines with their look, by which the tiles are cut.
std::vector<DrawnLine> drawn_lines(const ArchOpening& arch, const fonts::Style& style);

/// The lines of the template or of its half, what sheets along them follow, and the places it is judged by.
TemplateShape arch_shape(const ArchOpening& arch, const fonts::Style& style);

/// Steps of the ordinates: 3 in, 75 mm.
Length ordinate_step(const Tape& tape);

TemplateDrawing arch_drawing(const Pen& pen, const ArchOpening& arch, const Tape& tape, const Tiling& tiling);

}  // namespace kerfpacket::sheets
