#include "sheets/templates/arch_template.h"

#include "sheets/templates/arch_map.h"

namespace kerfpacket::sheets {
namespace {

const char* tile_title(const Tiling& tiling) {
    return tiling.way() == job::Sheets::grid ? "template.title_tile" : "template.title_sheet";
}

}  // namespace

void add_template(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    const Tape tape(plan.header.units, kit.words);
    const ArchOpening arch(plan, piece);
    const TemplateWays ways = template_ways(plan, kit, arch_shape(arch, kit.style), piece.template_wish.sheets);
    const Tiling& tiling = ways.tiling();
    page::Page scratch;
    const TemplateDrawing drawing = arch_drawing(Pen(scratch, kit), arch, tape, tiling);
    const std::string what = kit.words(piece.casing ? "template.liner_and_casing" : "template.liner");
    const char* subtitle = arch.half() ? "template.subtitle_half" : "template.subtitle_tile";
    const TemplateTitles titles{"template", arch.id, tile_title(tiling), {}, kit.words(subtitle, {{"what", what}}),
                                what};
    const TemplateContext context{plan, kit, tape, tiling, drawing, titles};
    drafts.push_back(template_map(context, arch_map(context, arch, ways)));
    add_tiles(drafts, context);
}

}  // namespace kerfpacket::sheets
