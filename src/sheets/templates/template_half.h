#pragma once
// Half a template, to be flipped about its centre line: the half left of the upright through the origin.

#include "sheets/templates/template_drawing.h"

namespace kerfpacket::sheets {

/// How far the last cell reaches beyond the centre line, at least.
inline constexpr Length beyond_flip = Length::inches(0.75);

/// The lines' left parts.
std::vector<DrawnLine> left_half(const std::vector<DrawnLine>& lines);
Path left_half(const Path& path);

/// Leaves the left half of a drawing whose centre line is the upright through the origin, with all else done that a
/// half wants: two crosses to flip it about, a hatch beyond, the words along the line.
void keep_left_half(TemplateDrawing& drawing, const Pen& pen, const Tiling& tiling);

}  // namespace kerfpacket::sheets
