#pragma once
// All tiles of a template in place, made small: which are printed, what is drawn on them, how wide the whole is.

#include "sheets/templates/template_tile.h"

namespace kerfpacket::sheets {

/// A width of the drawing, told under the tiles.
struct MapSpan {
    Point left;
    Point right;
    std::string figure;
};

/// Draws the tiles as large as `space` allows, from its top down; returns the height below which the page is free.
Length draw_template_grid(Pen& pen, const TemplateContext& context, const MapSpan& span, const Rect& space);

}  // namespace kerfpacket::sheets
