#pragma once
// Draws the items of one page through Cairo, on any of its surfaces.

#include <cairo.h>

#include "output/cairo_faces.h"
#include "page/document.h"

namespace kerfpacket::output {

/// How ink goes onto a surface: in grey levels on white paper, or, where the surface has nothing but an alpha channel
/// that stands for ink (255 black), as that: Cairo is quick at it.
enum class Paint { grey, ink };

/// Draws white paper and the page on it; of a surface for ink, the page, on what is there. The surface's unit must be
/// the point, its origin the upper left corner. Throws fonts::MissingCharacter, and std::runtime_error in plain words
/// when Cairo fails.
void draw_page(cairo_surface_t* surface, double units_a_point, const page::Page& page, CairoFaces& faces, Paint paint);

}  // namespace kerfpacket::output
