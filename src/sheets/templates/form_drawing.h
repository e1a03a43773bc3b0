#pragma once
// A rib of a bending form as a drawing, and its figures.

#include "plan/piece.h"
#include "sheets/layout/figure_table.h"
#include "sheets/templates/template_map.h"

namespace kerfpacket::sheets {

std::vector<DrawnLine> rib_lines(const plan::FormRib& rib, const fonts::Style& style);

/// What a rib's sheets follow, and the places it is judged by.
TemplateShape rib_shape(const plan::FormRib& rib, const fonts::Style& style);

TemplateDrawing form_drawing(const Pen& pen, const plan::Piece& piece, const Tape& tape);

/// Highest point of the rib over its chord, and how far it goes below it.
Length rib_rise(const plan::FormRib& rib);
Length rib_hollow(const plan::FormRib& rib);

/// The part of the rib's edge along one of its runs, and what the kerfs do there: "kerfs OPEN", "kerfs CLOSE".
Path run_path(const plan::FormRib& rib, const plan::BendRun& run);
std::string run_words(const plan::BendRun& run, const Kit& kit);

/// What the assembly map of the rib's tiles says.
TemplateMap form_map(const TemplateContext& context, const plan::Piece& piece, const TemplateWays& ways);

/// The arcs that a trammel strikes: radius, where its centre stands, between which stations.
FigureTable form_trammels(const plan::FormRib& rib, const Kit& kit, const Tape& tape);

}  // namespace kerfpacket::sheets
