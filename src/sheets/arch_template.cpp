#include "sheets/arch_template.h"

#include "sheets/arch_map.h"

namespace kerfpacket::sheets {

void add_template(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    const Tape tape(plan.header.units);
    const ArchOpening arch(plan, piece);
    const Tiling tiling = tiling_for(plan, kit, paths_of(drawn_lines(arch, kit.style)));
    page::Page scratch;
    const TemplateDrawing drawing = arch_drawing(Pen(scratch, kit), arch, tape, tiling);
    const std::string what = kit.words(piece.casing ? "template.liner_and_casing" : "template.liner");
    const TemplateTitles titles{
        "template", arch.id, "template.title_tile", {}, kit.words("template.subtitle_tile", {{"what", what}}), what};
    const TemplateContext context{plan, kit, tape, tiling, drawing, titles};
    drafts.push_back(template_map(context, arch_map(context, arch)));
    add_tiles(drafts, context);
}

}  // namespace kerfpacket::sheets
