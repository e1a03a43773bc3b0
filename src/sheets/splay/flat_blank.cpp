#include "sheets/splay/flat_blank.h"

#include <algorithm>

#include "sheets/drawings/small_drawing.h"
#include "sheets/layout/figure_table.h"
#include "sheets/layout/flow.h"
#include "sheets/layout/large_figures.h"
#include "sheets/layout/paper.h"
#include "sheets/splay/flat_drawing.h"
#include "sheets/splay/legs_drawing.h"
#include "sheets/splay/splay_space.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

/// What the whole comes to, on one page.
class Sheet {
public:
    Sheet(Flow& flow, const plan::Piece& piece, const Tape& tape)
        : flow_(flow), piece_(piece), splay_(*piece.splay), flat_(splay_, piece.blank()), tape_(tape) {}

    void draw() {
        pour(flow_, LargeFigures{{{words("flat.splay"), degrees(splay_.alpha)},
                                  {words("flat.sawn"), tape_.with_unit(splay_.sawn_width())},
                                  {words("flat.box_length"), tape_.with_unit(piece_.blank().box->x)},
                                  {words("flat.box_width"), tape_.with_unit(piece_.blank().box->y)}}});
        flow_.skip(style().small * 0.5);
        flow_.paragraph(Role::text,
                        words("flat.cut", {{"board", board_text(piece_, flow_.kit(), tape_)},
                                           {"n", std::to_string(piece_.blank().kerfs.size())},
                                           {"depth", tape_.exact(piece_.cut.depth)},
                                           {"side", kerf_side(piece_, flow_.kit())}}),
                        {Face::regular, style().text});
        flow_.heading(words("flat.laid"), words("flat.laid_aside"));
        const Rect room = flow_.take(172_pt);
        Pen pen = flow_.pen();
        blank(pen, room);
        places();
        // Of a divided blank they are told with the first part.
        if (piece_.leg_boards.empty() || piece_.board > 1) return;
        flow_.heading(words("flat.legs", {{"angle", degrees_text(splay_.alpha, flow_.kit())}}),
                      words(piece_.leg_boards.size() == 2 ? "flat.legs_pair" : "flat.legs_one"));
        const Rect legs = flow_.take(legs_height(piece_, style()));
        Pen at_legs = flow_.pen();
        draw_legs(at_legs, legs, piece_, tape_);
    }

private:
    const fonts::Style& style() const { return flow_.style(); }
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return flow_.kit().words(key, values);
    }
    std::string degrees(Angle angle) const {
        return words("work_order.angle", {{"angle", degrees_text(angle, flow_.kit())}});
    }

    /// Flat, in its box, every tenth kerf with its number.
    void blank(Pen& pen, const Rect& room) {
        const Scope figure =
            pen.figure(words("figure.flat_blank", {{"length", tape_.with_unit(piece_.blank().box->x)},
                                                   {"width", tape_.with_unit(piece_.blank().box->y)}}));
        const Path outline = flat_.outline();
        const Rect box = outline.bounds();
        const Rect space{room.low + Point{20_pt, style().small * 2.4}, room.high - Point{92_pt, style().small * 1.5}};
        const double scale = std::min(space.width() / box.width(), space.height() / box.height());
        const SmallDrawing small({(box.low.x + box.high.x) / 2, box.high.y},
                                 {(space.low.x + space.high.x) / 2, space.high.y}, scale);
        pen.stroke(Role::outline, small.at(outline), style().heavy);
        const plan::Blank& blank = piece_.blank();
        for (const std::size_t end : {std::size_t{0}, std::size_t{1}}) {
            const Length edge = end == 0 ? Length() : blank.length;
            const Length cut = end == 0 ? blank.trims[0] : blank.length - blank.trims[1];
            constexpr int lines = 4;
            for (int i = 1; i <= lines; ++i)
                pen.stroke(Role::hatch, small.at(flat_.kerf(edge + (cut - edge) * (static_cast<double>(i) / lines))),
                           style().fine);
            if (const auto leg = flat_.leg_cut(end)) pen.stroke(Role::limit, small.at(leg->seen), style().line);
        }
        const Type number{Face::regular, style().small, Align::centre};
        for (const plan::Kerf& kerf : blank.kerfs) {
            if (kerf.n % apart() != 0 && kerf.n != 1) continue;
            pen.stroke(Role::outline, small.at(flat_.kerf(kerf.at)), style().hair);
            const Point foot = small.at(flat_.at(kerf.at, splay_.narrow_edge())) - Point{{}, style().small * 1.1};
            pen.text(Role::text, foot, std::to_string(kerf.n), number);
        }
        measures(pen, small.at(box), room.high.x);
        zero_end(pen, small);
    }

    /// Beside the end itself, read from below.
    void zero_end(Pen& pen, const SmallDrawing& small) {
        const Point low = small.at(flat_.at({}, splay_.narrow_edge()));
        const Point high = small.at(flat_.at({}, splay_.wide_edge()));
        const bool left = flat_.zero_at_left();
        const Direction up = geom::direction(low, high);
        const Direction out = left ? up.left() : -up.left();
        const Point base = geom::middle(low, high) + out * (left ? 5_pt : 5_pt + style().small * 0.72);
        const Type type = Type{Face::bold, style().small}.centred();
        pen.text(Role::text, base, words("flat.zero"), type.turned(up.angle()));
    }

    /// Every how many kerfs one is drawn: their numbers keep apart.
    int apart() const {
        const auto kerfs = piece_.blank().kerfs.size();
        for (const int n : {5, 10, 20, 50, 100})
            if (kerfs / static_cast<std::size_t>(n) <= 16) return n;
        return 200;
    }

    void measures(Pen& pen, const Rect& box, Length right) {
        const Type bold{Face::bold, style().small};
        const Length below = box.low.y - style().small * 2;
        pen.dimension({box.low.x, below}, {box.high.x, below}, tape_.with_unit(piece_.blank().box->x), bold);
        const Length x = std::min(box.high.x + 34_pt, right - 30_pt);
        for (const Length y : {box.low.y, box.high.y})
            pen.line(Role::dimension, {x - 8_pt, y}, {x + 5_pt, y}, style().hair);
        pen.dimension({x, box.low.y}, {x, box.high.y}, tape_.with_unit(piece_.blank().box->y), bold);
        const Point top{(box.low.x + box.high.x) / 2, box.high.y + 4_pt};
        pen.text(Role::text, top, edge_name(splay_, true, flow_.kit()), bold.centred());
    }

    /// The picture in space, and beside it what the liner is made of.
    void places() {
        const FigureTable table = made_of();
        const Length height = std::max(height_of(table, style()) + style().text * 2.5, 200_pt);
        const Rect room = flow_.take(height);
        Pen pen = flow_.pen();
        const Length table_from = room.low.x + room.width() * 0.48;
        draw_splay_in_space(pen, {{room.low.x, room.low.y + style().small * 1.8}, {table_from - 14_pt, room.high.y}},
                            piece_);
        pen.text(Role::text, {(room.low.x + table_from - 14_pt) / 2, room.low.y + style().small * 0.4},
                 words(splay_.wide_at_room ? "flat.picture_room" : "flat.picture_far"),
                 Type{Face::regular, style().small}.centred());
        draw_table(pen, table_from, room.high.x, room.high.y - style().text * 1.9, table);
    }

    FigureTable made_of() const {
        FigureTable table;
        table.heading = words("flat.made_of", {{"unit", tape_.unit_name()}});
        table.shares = {0.68, 0.32};
        const auto row = [&](const char* key, const std::string& figure) {
            table.rows.push_back({{words(key), false}, figure});
        };
        row("flat.row_depth", tape_.exact_plain(splay_.depth));
        row("flat.row_side", tape_.plain(splay_.side()));
        row("flat.row_seen", tape_.plain(splay_.slant()));
        row("flat.row_sawn", tape_.plain(splay_.sawn_width()));
        row("flat.row_narrow", tape_.plain(flat_.narrow().length()));
        row("flat.row_wide", tape_.plain(flat_.wide().length()));
        const Length radius = flat_.radius(piece_.blank().centre());
        if (piece_.circular && radius > Length()) {
            row("flat.row_narrow_radius", tape_.plain(radius + splay_.narrow_edge()));
            row("flat.row_wide_radius", tape_.plain(radius + splay_.wide_edge()));
        }
        gaps(table);
        row("flat.row_turn", degrees_text(Angle::radians(std::abs(flat_.turn().radians())), flow_.kit()));
        return table;
    }

    /// From the first kerf to the second of the middle two, at either edge.
    void gaps(FigureTable& table) const {
        const auto& kerfs = piece_.blank().kerfs;
        if (kerfs.size() < 2 || !piece_.cut.even()) return;
        const std::size_t i = kerfs.size() / 2;
        for (const bool wide : {false, true}) {
            const Length edge = wide ? splay_.wide_edge() : splay_.narrow_edge();
            const Length gap = flat_.read(kerfs[i].at, edge) - flat_.read(kerfs[i - 1].at, edge);
            if (!piece_.circular && wide) continue;  // another from place to place
            table.rows.push_back({{words(wide ? "flat.row_wide_gap" : "flat.row_narrow_gap"), false},
                                  tape_.number(tape_.unit() == measure::Unit::inch ? gap.inches() : gap.mm(),
                                               tape_.unit() == measure::Unit::inch ? 4 : 2)});
        }
    }

    Flow& flow_;
    const plan::Piece& piece_;
    const plan::Splay& splay_;
    plan::FlatBlank flat_;
    const Tape& tape_;
};

}  // namespace

void add_flat_blank(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    if (!piece.splay) return;
    const Tape tape(plan.header.units, kit.words);
    const auto new_page = [&](bool first) {
        Draft draft = piece_page(plan, kit, piece.id, "flat-blank", "flat", first);
        draft.subtitle = kit.words(piece.splay->wide_at_room ? "flat.opens_room" : "flat.opens_far");
        return draft;
    };
    Flow flow(drafts, kit, new_page);
    Sheet(flow, piece, tape).draw();
    // Along the curve every kerf stands on one sheet from edge to edge.
    const TemplateWays ways = template_ways(plan, kit, flat_shape(piece, kit.style), job::Sheets::along);
    const Tiling& tiling = ways.tiling();
    page::Page scratch;
    const TemplateDrawing drawing = flat_drawing(Pen(scratch, kit), piece, tape, tiling);
    const bool zero_left = zero_at_left(piece);
    const TemplateTitles titles{"flat-blank",
                                piece.id,
                                tiling.way() == job::Sheets::grid ? "flat.title_tile" : "flat.title_sheet",
                                {},
                                kit.words(zero_left ? "flat.subtitle_left" : "flat.subtitle_right"),
                                kit.words("flat.subtitle_map")};
    const TemplateContext context{plan, kit, tape, tiling, drawing, titles};
    drafts.push_back(template_map(context, flat_map(context, piece)));
    add_tiles(drafts, context);
}

}  // namespace kerfpacket::sheets
