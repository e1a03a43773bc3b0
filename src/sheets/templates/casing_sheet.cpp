#include "sheets/templates/casing_sheet.h"

#include "sheets/templates/arch_drawing.h"
#include "sheets/templates/casing_drawing.h"
#include "sheets/templates/template_tile.h"
#include "sheets/templates/template_ways.h"
#include "sheets/words/wall_side.h"

namespace kerfpacket::sheets {
namespace {

void add_segment(Drafts& drafts, const plan::Plan& plan, const ArchOpening& arch, const AlikeSegments& alike,
                 const Kit& kit) {
    const plan::CasingSegment& segment = *alike.drawn;
    const Tape tape(plan.header.units, kit.words);
    const TemplateWays ways =
        template_ways(plan, kit, segment_shape(segment, kit.style), arch.piece().template_wish.sheets);
    const Tiling& tiling = ways.tiling();
    page::Page scratch;
    const int count = static_cast<int>(arch.lines().segments.size());
    const SegmentFacts facts{count, arch.piece(), arch.id, tiling};
    const TemplateDrawing drawing = casing_drawing(Pen(scratch, kit), alike, facts, tape);
    const fonts::Words::Values values{{"n", segment_numbers(alike.numbers())}, {"m", std::to_string(count)}};
    const std::size_t tiles = tiling.printed();
    const bool in_grid = tiling.way() == job::Sheets::grid;
    const char* title = tiles == 1 ? "casing.title" : in_grid ? "casing.title_tile" : "casing.title_sheet";
    const char* how_many = in_grid ? "casing.subtitle_tile" : "casing.subtitle_sheet";
    std::string subtitle =
        tiles > 1 ? kit.words(how_many, {{"count", std::to_string(tiles)}}) : kit.words("casing.subtitle");
    if (const std::string side = wall_side_text(arch.piece(), segment, kit); !side.empty())
        subtitle = side + "; " + subtitle;
    const TemplateTitles titles{"casing", arch.id, title, values, subtitle, {}};
    add_tiles(drafts, {plan, kit, tape, tiling, drawing, titles});
}

}  // namespace

void add_casing(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    if (!piece.casing) return;
    const ArchOpening arch(plan, piece);
    const std::size_t first = drafts.size();
    for (const AlikeSegments& alike : alike_segments(arch.lines().segments))
        add_segment(drafts, plan, arch, alike, kit);
    if (drafts.size() > first) drafts[first].outline = kit.words("casing.outline", {{"piece", arch.id}});
}

}  // namespace kerfpacket::sheets
