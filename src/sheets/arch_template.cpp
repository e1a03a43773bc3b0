#include "sheets/arch_template.h"

#include "sheets/template_map.h"
#include "sheets/template_tile.h"

namespace kerfpacket::sheets {

void add_template(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    const Tape tape(plan.header.units);
    const job::Media& media = plan.printer.media;
    const Tiling tiling(paths_of(template_lines(std::get<plan::ArchLines>(piece.lines))),
                        cell_on(media.height, media.width), kit.style.tile_overlap);
    page::Page scratch;
    const TemplateDrawing drawing = template_drawing(Pen(scratch, kit), piece, tape, tiling);
    drafts.push_back(template_map({plan, piece, kit, tape, tiling, drawing}));
    for (const Tile& tile : tiling.tiles())
        if (!tile.blank) drafts.push_back(template_tile({plan, piece, kit, tape, tiling, drawing}, tile));
}

}  // namespace kerfpacket::sheets
