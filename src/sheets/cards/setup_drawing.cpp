#include "sheets/cards/setup_drawing.h"

#include <algorithm>
#include <cmath>
#include <optional>

#include "sheets/layout/furniture.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length fence_width = 18_pt;

/// Dimension line of the end view.
Length below_board(const fonts::Style& style) { return style.small * 2.2 + 14_pt; }
/// Depth and web at its right.
Length dimension_room(const fonts::Style& style) { return style.small * 2.9 + 14_pt; }
/// Words over the end view: two lines where the saw's rear limit is known, else one.
Length above_board(const plan::Piece& piece, const fonts::Style& style) {
    return style.small * (piece.saw.spacer ? 2.8 : 1.4) + 16_pt;
}

/// The end view's places along the page.
struct EndView {
    Length fence;         ///< face of the fence
    Length back;          ///< back edge of the board
    Length front;         ///< front edge as drawn
    bool broken = false;  ///< the board is wider than the page: a break line stands in it
    Length table;         ///< under side of the board
    Length top;           ///< kerf face
    Length groove;        ///< bottom of the groove
};

EndView lay_out(const Pen& pen, const plan::Piece& piece, Length top) {
    EndView view;
    view.fence = side_margin + 6_pt + fence_width;
    view.back = view.fence + piece.saw.spacer.value_or(0_mm);
    const fonts::Style& style = pen.kit().style;
    const Length limit = pen.page_width() - side_margin - dimension_room(style);
    view.broken = view.back + piece.width > limit;
    view.front = view.broken ? limit : view.back + piece.width;
    view.top = top - above_board(piece, style);
    view.table = view.top - piece.cut.thickness;
    view.groove = view.top - piece.cut.depth;
    return view;
}

/// The board's outline; where it is cut short, two slanting strokes say so.
void board_outline(Pen& pen, const EndView& view) {
    const auto& style = pen.kit().style;
    pen.box(Role::outline, {{view.back, view.table}, {view.front, view.top}}, style.line);
    pen.line(Role::outline, {view.back, view.groove}, {view.front, view.groove}, style.heavy);
    if (!view.broken) return;
    const Length at = view.front - 60_pt;
    pen.fill(Role::outline,
             Path::polyline({{at - 6_pt, view.table - 4_pt},
                             {at + 2_pt, view.table - 4_pt},
                             {at + 8_pt, view.top + 4_pt},
                             {at, view.top + 4_pt}},
                            true),
             Ink::white);
    for (const Length shift : {-6_pt, 2_pt})
        pen.line(Role::outline, {at + shift, view.table - 4_pt}, {at + shift + 6_pt, view.top + 4_pt}, style.line);
}

void fence_and_spacer(Pen& pen, const plan::Piece& piece, const EndView& view) {
    const auto& style = pen.kit().style;
    const Rect fence{{view.fence - fence_width, view.table - 8_pt},
                     {view.fence, view.top + above_board(piece, style) - 4_pt}};
    pen.hatch(fence, 6_pt);
    pen.box(Role::outline, fence, style.line);
    pen.line(Role::outline, {view.fence, view.table}, {view.front + 30_pt, view.table}, style.line);
    if (view.back - view.fence >= 1_mm)
        pen.line(Role::outline, {view.fence, view.top}, {view.back, view.top}, style.line);
}

/// Where the groove would rise to the fence without the spacer, and the middle of the blade that makes it.
struct Ramp {
    Path middle;
    std::optional<Path> arc;  ///< the blade's own circle

    bool strikes(const Rect& box) const {
        return !geom::clip(middle, box).empty() || (arc && !geom::clip(*arc, box).empty());
    }
};

Ramp ramp_of(const plan::Plan& plan, const plan::Piece& piece, const EndView& view, const fonts::Style& style) {
    const Length centre = view.fence + *piece.saw.rear_limit;
    const Length radius = plan.saw.blade_diameter.value / 2;
    Ramp ramp{Path::line({centre, view.groove}, {centre, view.top + style.small * 2.4 + 10_pt}), {}};
    const Length reach = std::min(piece.saw.groove_ramp, centre - view.fence);
    if (reach <= 1_mm) return ramp;
    const Angle sweep = Angle::radians(std::asin(reach / radius));
    const Point end{centre - reach, view.groove + radius * (1 - std::cos(sweep.radians()))};
    ramp.arc = Path::arc({centre, view.groove}, end, -sweep);
    return ramp;
}

/// The spacer's name, in it where the ramp does not strike it: in its middle across as high as can be, else beside.
void name_spacer(Pen& pen, const EndView& view, const std::optional<Ramp>& ramp) {
    const auto& style = pen.kit().style;
    const std::string spacer = pen.kit().words("setup.spacer_drawn");
    constexpr Length clear = 2_pt;
    for (const Length size : {style.text, style.small}) {
        const Type type{Face::bold, size};
        const Length wide = pen.width(spacer, type);
        const Length spare = view.back - view.fence - wide - clear * 2;
        if (spare < 0_pt) continue;
        for (const double across : {0.5, 0.0, 1.0, 0.25, 0.75})
            for (Length base = view.top - size * 0.75 - 5_pt; base > view.table + 3_pt; base -= 1_pt) {
                const Point start{view.fence + clear + spare * across, base};
                const Rect box{start, start + Point{wide, size * 0.75}};
                if (ramp && ramp->strikes(box.grown(clear))) continue;
                pen.text(Role::text, start, spacer, type);
                return;
            }
    }
}

void draw_ramp(Pen& pen, const plan::Plan& plan, const plan::Piece& piece, const Tape& tape, const EndView& view,
               const Ramp& ramp) {
    const auto& style = pen.kit().style;
    const auto& words = pen.kit().words;
    const Length centre = ramp.middle.start().x;
    pen.stroke(Role::centre, ramp.middle, style.hair, Dash::dash_dot);
    if (ramp.arc) pen.stroke(Role::outline, *ramp.arc, style.line, Dash::dashed);
    const auto say = [&](Length up, const std::string& text) {
        const Length x = centre + 5_pt;
        pen.text(Role::text, {x, view.top + up}, text,
                 pen.fitting(text, {Face::regular, style.small}, pen.page_width() - side_margin - x));
    };
    say(style.small * 1.45 + 12_pt, words(plan.saw.trial ? "setup.rear_limit_trial" : "setup.rear_limit",
                                          {{"limit", tape.exact(*piece.saw.rear_limit)}}));
    say(12_pt, words("setup.without_spacer"));
}

void end_dimensions(Pen& pen, const plan::Piece& piece, const Tape& tape, const EndView& view) {
    const auto& style = pen.kit().style;
    const auto& words = pen.kit().words;
    const Type bold{Face::bold, style.small};
    const Type regular{Face::regular, style.small};
    const Length x = view.front + 14_pt;
    const auto upright = [&](Length low, Length high, const std::string& figure, const Type& type) {
        pen.line(Role::dimension, {x, low}, {x, high}, style.hair);
        for (const Length y : {low, high})
            pen.line(Role::dimension, {x - 3_pt, y - 3_pt}, {x + 3_pt, y + 3_pt}, style.line);
        pen.text(Role::dimension, {x + 5_pt, (low + high) / 2 - 3_pt}, figure, type);
    };
    pen.line(Role::dimension, {view.front + 2_pt, view.top}, {x + 4_pt, view.top}, style.hair);
    pen.line(Role::dimension, {view.front + 2_pt, view.groove}, {x + 4_pt, view.groove}, style.hair);
    upright(view.groove, view.top, tape.exact_plain(piece.cut.depth), bold);
    upright(view.table, view.groove, tape.exact_plain(piece.cut.web()), regular);
    const Length y = view.table - style.small * 1.1 - 10_pt;
    const auto witness = [&](Length at) {
        pen.line(Role::dimension, {at, view.table - 3_pt}, {at, y - 4_pt}, style.hair);
    };
    witness(view.back);
    witness(view.front);
    if (view.back - view.fence > 1_mm) {
        pen.line(Role::dimension, {view.fence, view.table - 9_pt}, {view.fence, y - 4_pt}, style.hair);
        pen.dimension({view.fence, y}, {view.back, y}, tape.exact(*piece.saw.spacer), bold);
    }
    pen.dimension({view.back, y}, {view.front, y},
                  words(view.broken ? "setup.board_broken" : "setup.board_width", {{"width", tape.exact(piece.width)}}),
                  regular);
}

}  // namespace

Length end_view_height(const plan::Piece& piece, const fonts::Style& style) {
    return above_board(piece, style) + piece.cut.thickness + below_board(style);
}

void draw_end_view(Pen& pen, const plan::Plan& plan, const plan::Piece& piece, const Tape& tape, Length top) {
    const auto& style = pen.kit().style;
    const auto& words = pen.kit().words;
    const Scope figure = pen.figure(
        words("figure.end_view", {{"depth", tape.exact(piece.cut.depth)}, {"web", tape.exact(piece.cut.web())}}));
    const EndView view = lay_out(pen, piece, top);
    board_outline(pen, view);
    fence_and_spacer(pen, piece, view);
    std::optional<Ramp> ramp;
    if (piece.saw.rear_limit) ramp = ramp_of(plan, piece, view, style);
    if (view.back - view.fence >= 1_mm) name_spacer(pen, view, ramp);
    if (ramp) draw_ramp(pen, plan, piece, tape, view, *ramp);
    else
        pen.text(Role::text, {view.back + 5_pt, view.top + 12_pt}, words("setup.limit_unknown"),
                 pen.fitting(words("setup.limit_unknown"), {Face::regular, style.small},
                             pen.page_width() - side_margin - view.back - 5_pt));
    const Length right = view.front - (view.broken ? 70_pt : 8_pt);
    const auto say = [&](Length height, const char* key) {
        const Type type = pen.fitting(words(key), {Face::regular, style.small}, right - view.back - 6_pt);
        pen.text(Role::text, {right, height}, words(key), type.at_right());
    };
    if (piece.cut.depth > style.small * 1.5) say(view.groove + 4_pt, "setup.groove_bottom");
    if (piece.cut.web() > style.small * 1.3)
        say(view.table + (piece.cut.web() - style.small * 0.9) / 2, "setup.web_drawn");
    end_dimensions(pen, piece, tape, view);
}

void draw_grooves(Pen& pen, const plan::Piece& piece, const Rect& board) {
    const auto [left, plain] = board.low;
    const auto [right, face] = board.high;
    const Length bottom = face - piece.cut.depth;
    std::vector<Point> outline{{left, face}};
    const Length gap = piece.gaps.least;
    for (Length at = left + gap; at + piece.cut.kerf < right; at += gap) {
        const Length a = at - piece.cut.kerf / 2;
        const Length b = at + piece.cut.kerf / 2;
        outline.insert(outline.end(), {{a, face}, {a, bottom}, {b, bottom}, {b, face}});
    }
    outline.insert(outline.end(), {{right, face}, {right, plain}, {left, plain}});
    pen.stroke(Role::outline, Path::polyline(outline, true), pen.kit().style.line);
}

Length edge_view_height(const plan::Piece& piece, const fonts::Style& style) {
    return std::max(piece.cut.thickness + 16_pt, style.text * 4.2);
}

void draw_edge_view(Pen& pen, const plan::Piece& piece, const Tape& tape, Length top) {
    const auto& style = pen.kit().style;
    const auto& words = pen.kit().words;
    const Scope figure = pen.figure(
        words("figure.edge_view", {{"depth", tape.exact(piece.cut.depth)}, {"web", tape.exact(piece.cut.web())}}));
    const Length left = side_margin;
    const Length right = std::min(left + 4.5_in, pen.page_width() - side_margin - 218_pt);
    const Length face = top - std::max(8_pt, (edge_view_height(piece, style) - piece.cut.thickness) / 2 - 4_pt);
    const Length plain = face - piece.cut.thickness;
    draw_grooves(pen, piece, {{left, plain}, {right, face}});
    const Length x = right + 12_pt;
    const Length base = (face + plain) / 2 - 4_pt;
    const std::string spacing = words(varied_spacing(piece) ? "setup.edge_spacing_least" : "setup.edge_spacing",
                                      {{"spacing", spacing_text(piece, pen.kit(), tape)}});
    const auto say = [&](Length up, const std::string& text) {
        pen.text(Role::text, {x, base + up}, text,
                 pen.fitting(text, {Face::regular, style.text}, pen.page_width() - side_margin - x));
    };
    say(style.text * 1.5, spacing);
    say(0_pt, words("setup.edge_depth", {{"depth", tape.exact(piece.cut.depth)}}));
    say(-style.text * 1.5, words("setup.edge_web", {{"web", tape.exact(piece.cut.web())}}));
}

}  // namespace kerfpacket::sheets
