#include "sheets/cards/work_order.h"

#include <algorithm>
#include <array>
#include <iterator>
#include <utility>

#include "sheets/cards/board_drawing.h"
#include "sheets/cards/work_steps.h"
#include "sheets/drawings/piece_drawing.h"
#include "sheets/layout/flow.h"
#include "sheets/layout/furniture.h"
#include "sheets/layout/sign_off.h"
#include "sheets/words/settings_words.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

/// How closely it is set: a lower drawing and less white often save a second page.
struct Setting {
    Length drawing;
    Length white;        ///< in each row
    bool small = false;  ///< smaller figures, and how a step is done in small type
};
constexpr std::array settings{Setting{180_pt, 7_pt}, Setting{160_pt, 4_pt}, Setting{130_pt, 3_pt},
                              Setting{130_pt, 2_pt, true}};

// Parts of the width of the page.
constexpr double drawing_share = 0.62;
constexpr double figure_right = 0.75;
constexpr double page_right = 0.85;
constexpr double initials_left = 0.875;
constexpr double most_figure = 0.24;

class WorkOrder {
public:
    WorkOrder(Flow& flow, const plan::Plan& plan, const plan::Piece& piece, const Setting& setting)
        : flow_(flow), plan_(plan), piece_(piece), setting_(setting), tape_(plan.header.units, flow.kit().words) {}

    void draw(const std::vector<IndexEntry>& index) {
        statement();
        drawings();
        const std::vector<WorkStep> steps = work_steps(plan_, piece_, index, flow_.kit(), tape_);
        heads();
        for (std::size_t i = 0; i < steps.size(); ++i) row(i + 1, steps[i]);
        sign_off(flow_, {words("page.cut_by"), words("page.checked_by")});
    }

private:
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return flow_.kit().words(key, values);
    }
    const fonts::Style& style() const { return flow_.style(); }
    Type small() const { return {Face::regular, style().small}; }
    Length at(double share) const { return flow_.left() + flow_.width() * share; }
    Length what_height() const { return style().strong * 1.15; }
    Length box_side() const { return style().strong; }
    Length words_left() const { return flow_.left() + box_side() + style().strong * 2.6; }

    /// How many boards, what the bend is judged to be, and how the blank lies.
    void statement() {
        const std::string count =
            piece_.quantity == 1
                ? words("work_order.one", {{"piece", piece_.id}})
                : words("work_order.several", {{"piece", piece_.id}, {"n", std::to_string(piece_.quantity)}});
        const std::string verdict = bend_verdict(piece_, flow_.kit());
        const Rect line = flow_.take(leading(style().strong));
        Pen pen = flow_.pen();
        const Type bold{Face::bold, style().strong};
        const Length base = first_base(line, style().strong);
        const Length used =
            pen.text(Role::text, {line.low.x, base}, count, pen.fitting(count, bold, line.width() * 0.48));
        pen.text(Role::caution, {line.high.x, base}, verdict,
                 pen.fitting(verdict, Type{Face::bold, style().text}, line.width() - used - 12_pt).at_right());
        flow_.paragraph(Role::text, zero_end(piece_, flow_.kit()), small());
    }

    void drawings() {
        const Length height = std::max(setting_.drawing, board_drawing_height(style()));
        const Rect room = flow_.take(height);
        const Length middle = at(drawing_share);
        Pen pen = flow_.pen();
        draw_piece(pen, {room.low, {middle - 10_pt, room.high.y}}, piece_, tape_);
        pen.line(Role::furniture, {middle, room.low.y}, {middle, room.high.y}, style().hair);
        draw_board(pen, {{middle + 10_pt, room.low.y}, room.high}, piece_, tape_);
        flow_.skip(setting_.white);
    }

    void heads() {
        const Rect room = flow_.take(leading(style().small));
        Pen pen = flow_.pen();
        const Length base = first_base(room, style().small);
        const Scope table = pen.going_on(Tag::table);
        const Scope line = pen.within(Tag::row);
        const auto head = [&](Length x, std::string_view key, Length width, Align align) {
            const Scope cell = pen.within(Tag::header_cell);
            Type type = pen.fitting(words(key), small(), width);
            type.align = align;
            pen.text(Role::text, {x, base}, words(key), type);
        };
        head(words_left(), "work_order.column_do", at(0.5) - words_left(), Align::left);
        head(at(figure_right), "work_order.column_figure", at(0.24) - at(0), Align::right);
        head(at(page_right), "work_order.column_page", at(page_right) - at(figure_right) - 6_pt, Align::right);
        head(at(1), "work_order.column_initials", at(1) - at(initials_left), Align::right);
        pen.line(Role::box, {flow_.left(), room.low.y}, {flow_.right(), room.low.y}, style().heavy);
    }

    void row(std::size_t number, const WorkStep& step) {
        const Type what{Face::bold, style().strong};
        const std::string& widest = step.widest.empty() ? step.figure : step.widest;
        const Type figure = flow_.pen().fitting(widest, {Face::bold, setting_.small ? style().strong : style().title},
                                                flow_.width() * most_figure);
        const Length figure_left = at(figure_right) - flow_.pen().width(widest, figure) - 8_pt;
        const Length width = figure_left - words_left();
        Type how{Face::regular, setting_.small ? style().small : style().text};
        // Condensed on one line rather than on two.
        if (flow_.pen().width(step.how, how) > width) how.face = Face::condensed;
        const Length how_height = flow_.pen().paragraph_height(step.how, how, width, leading(how.size));
        const Length below = step.stops ? style().small * 1.5 : Length();
        const Rect taken = flow_.take(what_height() + leading(how.size) + how_height + setting_.white + below);
        const Rect room{{taken.low.x, taken.low.y + below}, taken.high};
        Pen pen = flow_.pen();
        const Scope table = pen.going_on(Tag::table);
        const Scope line = pen.within(Tag::row);
        const Length middle = (room.low.y + room.high.y) / 2 - style().strong * 0.36;
        tick_box(pen, {room.low.x, (room.low.y + room.high.y - box_side()) / 2}, box_side());
        {
            const Scope cell = pen.within(Tag::row_header);
            pen.text(Role::text, {words_left() - 10_pt, middle}, std::to_string(number),
                     Type{Face::regular, style().strong}.at_right());
            const Length base = first_base(room, what.size) - setting_.white / 2;
            pen.text(Role::text, {words_left(), base}, step.what, pen.fitting(step.what, what, width));
            pen.paragraph(Role::text, {words_left(), base - leading(how.size)}, step.how, how, width,
                          leading(how.size));
            if (step.stops) stop(pen, {taken.low, {taken.high.x, room.low.y}});
        }
        {
            const Scope cell = pen.within(Tag::cell);
            if (!step.figure.empty()) pen.text(Role::text, {at(figure_right), middle}, step.figure, figure.at_right());
        }
        page_cell(pen, step, room, middle);
        pen.empty_cells(1);
        pen.line(Role::box, {at(initials_left), middle - 3_pt}, {at(1), middle - 3_pt}, style().line);
        if (!step.stops) pen.line(Role::box, {room.low.x, room.low.y}, {room.high.x, room.low.y}, style().hair);
    }

    void page_cell(Pen& pen, const WorkStep& step, const Rect& room, Length base) {
        const Scope cell = pen.within(Tag::cell);
        const Length left = at(figure_right) + 6_pt;
        if (step.left_out) {
            const std::string none = words("work_order.left_out");
            pen.text(Role::text, {at(page_right), base}, none,
                     pen.fitting(none, small(), at(page_right) - left).at_right());
        }
        if (!step.told) return;
        const std::string pages = page_numbers(*step.told);
        pen.text(Role::text, {at(page_right), base}, pages,
                 pen.fitting(pages, {Face::regular, style().text}, at(page_right) - left).at_right());
        pen.link({{left, room.low.y}, {at(page_right), room.high.y}}, step.told->first);
    }

    /// A heavy line across the page: nothing below it before the coupon has held.
    void stop(Pen& pen, const Rect& room) {
        const Length middle = (room.low.y + room.high.y) / 2;
        pen.line(Role::box, {room.low.x, middle}, {room.high.x, middle}, style().end);
        pen.text_on_white(Role::caution, {room.low.x + room.width() / 2, middle - style().small * 0.36},
                          words("work_order.stop"), Type{Face::bold, style().small}.centred());
    }

    Flow& flow_;
    const plan::Plan& plan_;
    const plan::Piece& piece_;
    const Setting& setting_;
    Tape tape_;
};

Drafts drawn(const plan::Plan& plan, const plan::Piece& piece, const std::vector<IndexEntry>& index, const Kit& kit,
             std::size_t setting) {
    Drafts drafts;
    const auto new_page = [&](bool first) {
        Draft draft = piece_page(plan, kit, piece.id, "work-order", "work_order", first);
        const std::string shape = shape_name(piece, kit);
        draft.setting = setting;
        draft.subtitle = piece_name(piece, kit) + (shape.empty() ? "" : ", " + shape);
        return draft;
    };
    Flow flow(drafts, kit, new_page, {70_pt, 40_pt});
    WorkOrder(flow, plan, piece, settings.at(setting)).draw(index);
    return drafts;
}

}  // namespace

void add_work_order(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    Drafts best;
    for (std::size_t setting = 0; setting < settings.size(); ++setting) {
        Drafts made = drawn(plan, piece, {}, kit, setting);
        if (best.empty() || made.size() < best.size()) best = std::move(made);
        if (best.size() == 1) break;
    }
    std::move(best.begin(), best.end(), std::back_inserter(drafts));
}

Drafts numbered_work_order(const Draft& first, const plan::Plan& plan, const plan::Piece& piece,
                           const std::vector<IndexEntry>& index, const Kit& kit) {
    return drawn(plan, piece, index, kit, first.setting);
}

}  // namespace kerfpacket::sheets
