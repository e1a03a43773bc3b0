#include "sheets/templates/form_sheet.h"

#include "sheets/templates/form_table.h"

namespace kerfpacket::sheets {

void add_form(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    if (!piece.has_own_ribs()) return;
    const Tape tape(plan.header.units, kit.words);
    const TemplateWays ways = template_ways(plan, kit, rib_shape(*piece.form, kit.style), piece.template_wish.sheets);
    const Tiling& tiling = ways.tiling();
    page::Page scratch;
    const TemplateDrawing drawing = form_drawing(Pen(scratch, kit), piece, tape);
    const bool one_tile = tiling.printed() == 1;
    const char* title = one_tile                            ? "form.title_rib"
                        : tiling.way() == job::Sheets::grid ? "form.title_tile"
                                                            : "form.title_sheet";
    const TemplateTitles titles{
        "form", piece.id, title, {}, kit.words("form.subtitle_tile"), kit.words("form.subtitle_map")};
    const TemplateContext context{plan, kit, tape, tiling, drawing, titles};
    add_form_table(drafts, context, piece);
    if (!one_tile) drafts.push_back(template_map(context, form_map(context, piece, ways)));
    add_tiles(drafts, context);
}

}  // namespace kerfpacket::sheets
