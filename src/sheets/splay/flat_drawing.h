#pragma once
// The flat blank of a splayed liner at full size: its outline, every kerf from edge to edge, what goes off its ends.

#include "sheets/templates/template_map.h"

namespace kerfpacket::sheets {

/// As the blank lies: kerf face up, wide edge up.
TemplateShape flat_shape(const plan::Piece& piece, const fonts::Style& style);

/// With what each sheet of the tiling says of its edges.
TemplateDrawing flat_drawing(const Pen& pen, const plan::Piece& piece, const Tape& tape, const Tiling& tiling);

/// What is measured on the joined whole.
TemplateMap flat_map(const TemplateContext& context, const plan::Piece& piece);

/// "WIDE edge, room side": either edge, and on which side of the wall it comes to lie.
std::string edge_name(const plan::Splay& splay, bool wide, const Kit& kit);

}  // namespace kerfpacket::sheets
