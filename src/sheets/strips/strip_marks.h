#pragma once
// The kerfs of a strip: feet, ticks, numerals, distances; over the edge their slots as the blade will cut them.

#include <vector>

#include "sheets/strips/strip_drawing.h"

namespace kerfpacket::sheets {

class StripFrame;

void draw_marks(Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame);

/// The fold of an edge strip, and the depth of cut where wood stays.
void draw_edge_lines(Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame);

/// What the marks of a strip take of it: no line runs there and no other words stand there. `beside_tick` is kept free
/// on either side of the ticks, where they are measured.
std::vector<Rect> mark_areas(Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame,
                             Length beside_tick);

/// How near a tick nothing else stands where it is measured.
Length measured_beside(const plan::Piece& piece);

}  // namespace kerfpacket::sheets
