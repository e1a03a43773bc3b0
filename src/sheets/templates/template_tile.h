#pragma once
// One page of a template at full size: any drawing, through the window of one tile.

#include "plan/plan.h"
#include "sheets/layout/draft.h"
#include "sheets/templates/template_drawing.h"

namespace kerfpacket::sheets {

/// What the pages of a template say in their headers.
struct TemplateTitles {
    std::string sheet;  ///< page::Page::sheet
    std::string piece;
    std::string title_key;  ///< words of a tile's title, with {tile}
    fonts::Words::Values title_values;
    std::string subtitle;  ///< of a tile
    std::string map_subtitle;
};

/// What all tiles of a template share.
struct TemplateContext {
    const plan::Plan& plan;
    const Kit& kit;
    const Tape& tape;
    const Tiling& tiling;
    const TemplateDrawing& drawing;
    const TemplateTitles& titles;
};

Draft template_tile(const TemplateContext& context, const Tile& tile);

/// A page for each tile that is printed.
void add_tiles(Drafts& drafts, const TemplateContext& context);

/// The printed tile with which joining begins: along a curve the first; in a grid, of the top row that prints anything,
/// the one nearest to the middle.
std::string first_tile(const Tiling& tiling);

}  // namespace kerfpacket::sheets
