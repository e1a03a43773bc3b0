#include "sheets/templates/arch_template.h"

#include <utility>

#include "sheets/templates/arch_map.h"

namespace kerfpacket::sheets {
namespace {

const char* tile_title(const Tiling& tiling) {
    return tiling.way() == job::Sheets::grid ? "template.title_tile" : "template.title_sheet";
}

TemplateWays ways_of(const plan::Plan& plan, const ArchOpening& arch, const Kit& kit) {
    return template_ways(plan, kit, arch_shape(arch, kit.style), arch.piece().template_wish.sheets);
}

}  // namespace

void add_template(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    const Tape tape(plan.header.units, kit.words);
    ArchOpening arch(plan, piece);
    TemplateWays ways = ways_of(plan, arch, kit);
    // A half that nobody asked for has to save paper.
    if (arch.half && piece.template_wish.half_at.line == 0) {
        ArchOpening whole = arch;
        whole.half = false;
        TemplateWays of_whole = ways_of(plan, whole, kit);
        if (of_whole.tiling().printed() <= ways.tiling().printed()) {
            arch = std::move(whole);
            ways = std::move(of_whole);
        }
    }
    const Tiling& tiling = ways.tiling();
    page::Page scratch;
    const TemplateDrawing drawing = arch_drawing(Pen(scratch, kit), arch, tape, tiling);
    const std::string what = kit.words(arch.lines().casing_outside ? "template.liner_and_casing" : "template.liner");
    const char* subtitle = arch.half ? "template.subtitle_half" : "template.subtitle_tile";
    const TemplateTitles titles{"template", arch.id, tile_title(tiling), {}, kit.words(subtitle, {{"what", what}}),
                                what};
    const TemplateContext context{plan, kit, tape, tiling, drawing, titles};
    drafts.push_back(template_map(context, arch_map(context, arch, ways)));
    add_tiles(drafts, context);
}

}  // namespace kerfpacket::sheets
