#pragma once
// The kerfs of a strip: feet, ticks, numerals, distances; over the edge their slots as the blade will cut them.

#include "sheets/strips/strip_drawing.h"

namespace kerfpacket::sheets {

class StripFrame;

void draw_marks(Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame);

/// The fold of an edge strip, and the depth of cut where wood stays.
void draw_edge_lines(Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame);

/// Distances from zero.
struct Reach {
    Length from;
    Length to;
};
/// Between which of them the running distances of a strip stand, which are wider than their kerfs are apart.
Reach running_reach(const Pen& pen, const StripContext& context, const Strip& strip);

}  // namespace kerfpacket::sheets
