#include "sheets/cards/setup_blocks.h"

#include <algorithm>
#include <cmath>
#include <vector>

#include "sheets/layout/furniture.h"
#include "sheets/splay/flat_drawing.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length fence_height = 12_pt;
constexpr Length words_room = 158_pt;
constexpr Length board_room = 150_pt;

/// x along the fence, the operator below; the blade stands in the middle.
class BlocksPlan {
public:
    BlocksPlan(Pen& pen, const plan::Piece& piece, const Tape& tape, Length top)
        : pen_(pen),
          piece_(piece),
          splay_(*piece.splay),
          flat_(splay_, piece.blank()),
          tape_(tape),
          left_(side_margin + 6_pt),
          right_(pen.page_width() - side_margin - words_room),
          blade_((left_ + right_) / 2),
          fence_(top - fence_height - style().small * 1.2),
          scale_(board_room / (splay_.sawn_width() + held_off() + bow_of_view())),
          half_view_((right_ - left_) / 2) {
        edge_ = fence_ - held_off() * scale_;
    }

    void draw() {
        fence_and_spacer();
        board();
        blocks();
        said();
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    std::string words(const char* key, const fonts::Words::Values& values = {}) const {
        return pen_.kit().words(key, values);
    }
    Type small() const { return {Face::regular, style().small}; }
    Type bold() const { return {Face::bold, style().small}; }
    const std::optional<plan::Blocks>& held() const { return piece_.saw.blocks; }
    Length spacer() const { return piece_.saw.spacer.value_or(Length()); }
    /// Of the wide edge from the fence, at the blade.
    Length held_off() const { return spacer() + (held() ? held()->size - held()->bow : Length()); }
    /// So much the wide edge falls away inside the view.
    Length bow_of_view() const { return splay_.sawn_width() * 0.35; }

    void fence_and_spacer() {
        const Rect fence{{left_, fence_}, {right_, fence_ + fence_height}};
        pen_.hatch(fence, 6_pt);
        pen_.box(Role::outline, fence, style().line);
        if (spacer() > Length())
            pen_.box(Role::outline, {{left_, fence_ - spacer() * scale_}, {right_, fence_}}, style().line);
    }

    /// Where a place along the blank so far across comes to lie, when the kerf in the middle is under the blade.
    Point at(Length along, Length across) const {
        const Length middle = piece_.blank().centre();
        const Point on = flat_.at(middle, splay_.wide_edge());
        const Point p = flat_.at(middle + along, across) - on;
        const Direction up =
            geom::direction(flat_.at(middle, splay_.narrow_edge()), flat_.at(middle, splay_.wide_edge()));
        const Point turned{p.x * up.y - p.y * up.x, p.x * up.x + p.y * up.y};
        return Point{blade_, edge_} + turned * scale_;
    }

    void board() {
        const Length reach = half_view_ / scale_;
        const plan::Blank& blank = piece_.blank();
        // As far as the view shows it, or as it goes.
        const Length most = std::min(reach, (blank.length / 2) * 0.98);
        const auto edge = [&](Length across) {
            std::vector<Point> points;
            constexpr int steps = 48;
            for (int i = 0; i <= steps; ++i)
                if (const Point p = at(most * (2.0 * i / steps - 1), across); p.x > left_ && p.x < right_)
                    points.push_back(p);
            return points;
        };
        const auto wide = edge(splay_.wide_edge());
        const auto narrow = edge(splay_.narrow_edge());
        for (const auto& line : {wide, narrow}) pen_.stroke(Role::outline, Path::polyline(line), style().heavy);
        broken(wide.front(), narrow.front());
        broken(wide.back(), narrow.back());
        // Cut from zero on, to the blade; not cut yet on its other side, where the words stand.
        const double away_from_zero = flat_.zero_at_left() ? 1 : -1;
        const Length step = std::max(piece_.cut.least_spacing, 5_pt / scale_);
        for (Length away = step; away < most; away += step) {
            const Point wide_end = at(-away, splay_.wide_edge()), narrow_end = at(-away, splay_.narrow_edge());
            if ((blade_ - wide_end.x) * away_from_zero < 2_pt || wide_end.x < left_ + 6_pt ||
                wide_end.x > right_ - 6_pt || narrow_end.x < left_ + 6_pt || narrow_end.x > right_ - 6_pt)
                continue;
            pen_.line(Role::hatch, wide_end, narrow_end, style().hair);
        }
        pen_.line(Role::outline, at({}, splay_.narrow_edge()), at({}, splay_.wide_edge()), style().heavy * 2);
        const Point foot = at({}, splay_.narrow_edge());
        pen_.line(Role::centre, {blade_, fence_ + fence_height + 5_pt}, {blade_, foot.y - 30_pt}, style().fine,
                  Dash::dash_dot);
        pen_.text(Role::text, {blade_ + 5_pt, foot.y - 28_pt}, words("setup.blade_square"), small());
        Type type = bold();
        type.align = away_from_zero > 0 ? Align::left : Align::right;
        const Point inside = at({}, splay_.narrow_edge() + splay_.sawn_width() * 0.12);
        pen_.text(Role::text, {blade_ + 8_pt * away_from_zero, inside.y}, words("setup.narrow_you"), type);
        Type plain = small();
        plain.align = type.align;
        const Point middle = at({}, splay_.narrow_edge() + splay_.sawn_width() * 0.4);
        pen_.text(Role::text, {blade_ + 8_pt * away_from_zero, middle.y}, words("setup.not_cut"), plain);
        const Point high = at({}, splay_.wide_edge() - splay_.sawn_width() * 0.4);
        pen_.text(Role::text, {blade_ + 8_pt * away_from_zero, high.y}, words("setup.wide_fence"), type);
    }

    void broken(Point a, Point b) {
        std::vector<Point> zigzag;
        constexpr int teeth = 8;
        for (int i = 0; i <= teeth; ++i)
            zigzag.push_back(a + (b - a) * (static_cast<double>(i) / teeth) + Point{i % 2 == 0 ? 0_pt : 4_pt, {}});
        pen_.stroke(Role::outline, Path::polyline(zigzag), style().line);
    }

    void blocks() {
        if (!held()) return;
        const Length top = fence_ - spacer() * scale_;
        for (const double way : {-1.0, 1.0}) {
            const Length inner = blade_ + held()->half * scale_ * way;
            const Length outer = inner + held()->size * scale_ * way;
            const Rect block{{std::min(inner, outer), top - held()->size * scale_}, {std::max(inner, outer), top}};
            pen_.hatch(block, 4_pt);
            pen_.box(Role::outline, block, style().line);
            pen_.stroke(Role::outline, Path::circle({inner, block.low.y}, 4_pt), style().line);
            Type type = bold();
            type.align = way < 0 ? Align::right : Align::left;
            pen_.text(Role::text, {outer + 4_pt * way, block.low.y + 2_pt}, words("setup.block"), type);
        }
        const Length y = top - held()->size * scale_ - 22_pt;
        const std::string half = tape_.exact(held()->half);
        const Length reach = held()->half * scale_;
        pen_.dimension({blade_ - reach, y}, {blade_, y}, half, bold());
        pen_.dimension({blade_, y}, {blade_ + reach, y}, half, bold());
    }

    void said() {
        const Length x = right_ + 14_pt;
        const Length room = pen_.page_width() - side_margin - x;
        Length y = fence_ + fence_height + 2_pt;
        const auto paragraph = [&](const std::string& text, const Type& type, Length down) {
            y = y - down;
            y = pen_.paragraph(Role::text, {x, y}, text, type, room, leading_of(type));
        };
        const std::string spacer_is = spacer() > Length()
                                          ? words("setup.spacer_is", {{"spacer", tape_.exact(spacer())}})
                                      : piece_.saw.spacer ? words("setup.no_spacer")
                                                          : words("setup.spacer_by_trial");
        paragraph(spacer_is, bold(), style().small);
        if (held()) {
            paragraph(words("setup.two_blocks", {{"size", tape_.exact(held()->size)}}), bold(), style().small * 1.7);
            paragraph(words("setup.blocks_bear"), small(), style().small * 1.3);
        } else {
            paragraph(words("setup.no_blocks"), small(), style().small * 1.7);
        }
        if (piece_.saw.spacer && piece_.saw.rear_limit)
            paragraph(words("setup.edge_to_fence",
                            {{"off", tape_.with_unit(held_off())}, {"limit", tape_.exact(*piece_.saw.rear_limit)}}),
                      small(), style().small * 1.7);
        paragraph(words("setup.never_narrow"), small(), style().small * 1.7);
    }

    static Length leading_of(const Type& type) { return type.size * 1.28; }

    Pen& pen_;
    const plan::Piece& piece_;
    const plan::Splay& splay_;
    plan::FlatBlank flat_;
    const Tape& tape_;
    Length left_, right_, blade_, fence_;
    double scale_;  ///< of the drawing
    Length half_view_;
    Length edge_{};  ///< of the wide edge at the blade
};

}  // namespace

Length blocks_plan_height(const plan::Piece& /*piece*/, const fonts::Style& style) {
    return style.small * 1.2 + fence_height + board_room + 22_pt;
}

void draw_blocks_plan(Pen& pen, const plan::Piece& piece, const Tape& tape, Length top) {
    const Scope figure = pen.figure(pen.kit().words("figure.blocks_plan"));
    BlocksPlan(pen, piece, tape, top).draw();
}

std::string bearing_text(const plan::Piece& piece, const Kit& kit) {
    if (!piece.saw.blocks) return kit.words("setup.lined_up");
    const plan::FlatBlank flat(*piece.splay, piece.blank());
    const Length wide = piece.splay->wide_edge();
    const Length all = flat.read(piece.blank().length, wide);
    const Length radius = flat.radius(piece.blank().centre()) + wide;
    const Length reach = radius * std::asin(piece.saw.blocks->half / radius);
    int first = 0, last = 0;
    for (const plan::Kerf& kerf : piece.blank().kerfs) {
        const Length at = flat.read(kerf.at, wide);
        if (at < reach || at > all - reach) continue;
        if (first == 0) first = kerf.n;
        last = kerf.n;
    }
    const int count = static_cast<int>(piece.blank().kerfs.size());
    if (first == 0) return kit.words("setup.lined_up");
    return kit.words("setup.bear_on_both", {{"first", std::to_string(first)},
                                            {"last", std::to_string(last)},
                                            {"before", std::to_string(first - 1)},
                                            {"after", std::to_string(last + 1)},
                                            {"count", std::to_string(count)}});
}

}  // namespace kerfpacket::sheets
