#pragma once
// One page of an arch template at full size.

#include "sheets/draft.h"
#include "sheets/template_drawing.h"

namespace kerfpacket::sheets {

/// What all tiles of a template share.
struct TemplateContext {
    const plan::Plan& plan;
    const plan::Piece& piece;
    const Kit& kit;
    const Tape& tape;
    const Tiling& tiling;
    const TemplateDrawing& drawing;
};

Draft template_tile(const TemplateContext& context, const Tile& tile);

/// "Arch liner and casing", "Arch liner".
std::string template_content(const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
