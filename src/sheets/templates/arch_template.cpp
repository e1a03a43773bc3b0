#include "sheets/templates/arch_template.h"

#include <iterator>
#include <utility>

#include "sheets/templates/arch_map.h"

namespace kerfpacket::sheets {
namespace {

const char* tile_title(const Tiling& tiling) {
    return tiling.way() == job::Sheets::grid ? "template.title_tile" : "template.title_sheet";
}

Drafts drawn(const plan::Plan& plan, const ArchOpening& arch, const Kit& kit) {
    const Tape tape(plan.header.units, kit.words);
    const plan::Piece& piece = arch.piece();
    const TemplateWays ways = template_ways(plan, kit, arch_shape(arch, kit.style), piece.template_wish.sheets);
    const Tiling& tiling = ways.tiling();
    page::Page scratch;
    const TemplateDrawing drawing = arch_drawing(Pen(scratch, kit), arch, tape, tiling);
    const std::string what = kit.words(piece.casing ? "template.liner_and_casing" : "template.liner");
    const char* subtitle = arch.half() ? "template.subtitle_half" : "template.subtitle_tile";
    const TemplateTitles titles{"template", arch.id, tile_title(tiling), {}, kit.words(subtitle, {{"what", what}}),
                                what};
    const TemplateContext context{plan, kit, tape, tiling, drawing, titles};
    Drafts drafts{template_map(context, arch_map(context, arch, ways))};
    add_tiles(drafts, context);
    return drafts;
}

}  // namespace

void add_template(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    ArchOpening arch(plan, piece);
    Drafts best = drawn(plan, arch, kit);
    // A half that nobody asked for has to save paper.
    if (arch.half() && piece.template_wish.half_at.line == 0) {
        arch.half_template = false;
        Drafts whole = drawn(plan, arch, kit);
        if (whole.size() <= best.size()) best = std::move(whole);
    }
    std::move(best.begin(), best.end(), std::back_inserter(drafts));
}

}  // namespace kerfpacket::sheets
