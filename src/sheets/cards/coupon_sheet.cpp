#include "sheets/cards/coupon_sheet.h"

#include <algorithm>
#include <iterator>
#include <utility>

#include "sheets/cards/coupon_drawing.h"
#include "sheets/cards/coupon_words.h"
#include "sheets/layout/flow.h"
#include "sheets/layout/furniture.h"
#include "sheets/layout/one_page.h"
#include "sheets/strips/strips.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr double row_name_share = 0.24;  ///< of the page's width
constexpr Length between_coupons = 6_pt;
/// The least that words beside a block of the job file's lines want.
constexpr Length least_beside = 220_pt;
/// What the test of one kerf takes of a page that has a coupon's strip, and what stands below it there.
constexpr Length one_kerf_room = 215_pt;
constexpr Length under_strips = 66_pt;

class CouponSheet {
public:
    CouponSheet(Flow& flow, const plan::Plan& plan, const plan::Piece& piece, bool strips_elsewhere = false)
        : flow_(flow),
          piece_(piece),
          strips_elsewhere_(strips_elsewhere),
          kit_(flow.kit()),
          tape_(plan.header.units, kit_.words),
          size_(coupon_size(piece, tape_.unit())) {}

    void draw() {
        flow_.heading(words("coupon.make"));
        list(coupon_steps(piece_, size_, strips_elsewhere_, kit_, tape_));
        flow_.heading(words("coupon.measure"), words("coupon.measure_aside"));
        flow_.picture(coupon_drawing_height(size_.side), [&](Pen& pen, const Rect& room) {
            draw_coupon(pen, size_.side, room.high.y);
            return room.low.y;
        });
        write();
        where_it_goes();
        as_trial();
    }

    /// Where kerfs close: how a single one in scrap tells at which radius.
    void one_kerf() {
        flow_.heading(words("coupon.one_kerf"), words("coupon.one_kerf_aside"));
        flow_.picture(one_kerf_drawing_height, [&](Pen& pen, const Rect& room) {
            draw_one_kerf(pen, room.high.y);
            return room.low.y;
        });
        list(one_kerf_steps(piece_, size_, kit_, tape_));
    }

private:
    const fonts::Style& style() const { return kit_.style; }
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return kit_.words(key, values);
    }
    Type text() const { return {Face::regular, style().text}; }
    Type small() const { return {Face::regular, style().small}; }

    /// Things to do, each with its box.
    void list(const std::vector<std::string>& steps) {
        for (const std::string& step : steps) flow_.item(Role::text, step, text());
    }

    /// A row of the table: a blank for each coupon, or the job file's words to tick.
    struct Row {
        std::string name;
        std::vector<std::string> choices{};
    };

    /// A table with a column for each coupon.
    void write() {
        const std::string unit = tape_.unit_name();
        const std::vector<Row> rows{{words("coupon.write_chord", {{"unit", unit}})},
                                    {words("coupon.write_rise", {{"unit", unit}})},
                                    {words("coupon.write_held"), to_tick(ways_to_hold(), kit_)},
                                    {words("coupon.write_result"), to_tick(ends_of_bending(), kit_)},
                                    {words("coupon.write_kerf_number")},
                                    {words("coupon.write_web", {{"unit", unit}})},
                                    {words("coupon.write_kerf", {{"unit", unit}})},
                                    {words("coupon.write_date")}};
        flow_.heading(words("coupon.write"));
        Length height = head_height();
        for (const Row& row : rows) height += row_height(row);
        const Rect room = flow_.take(height);
        Pen pen = flow_.pen();
        const Scope table = pen.within(Tag::table);
        column_heads(pen, room.high.y);
        Length top = room.high.y - head_height();
        for (const Row& row : rows) {
            draw_row(pen, row, top);
            top -= row_height(row);
        }
    }

    Length name_width() const { return flow_.width() * row_name_share; }
    Length column_width() const {
        return (flow_.width() - name_width() - between_coupons * (coupons_of_board - 1)) / coupons_of_board;
    }
    Length left_of(int coupon) const {
        return flow_.left() + name_width() + (column_width() + between_coupons) * coupon;
    }
    Length head_height() const { return leading(style().text) + style().text * 0.7; }
    /// So high that a hand can write in it.
    Length line_height() const { return style().text * (19.0 / 11); }
    Length row_height(const Row& row) {
        const Length more = flow_.pen().paragraph_height(row.name, text(), name_width() - 4_pt, leading(style().text));
        const auto lines = static_cast<double>(std::max<std::size_t>(1, choice_lines(row.choices).size()));
        return std::max(line_height() + more, line_height() * lines);
    }

    void column_heads(Pen& pen, Length top) {
        const Scope line = pen.within(Tag::row);
        pen.empty_cells(1);
        for (int i = 0; i < coupons_of_board; ++i) {
            const Scope cell = pen.within(Tag::header_cell);
            pen.text(Role::text, {left_of(i) + column_width() / 2, top - style().text * 0.95},
                     words("coupon.column", {{"n", std::to_string(i + 1)}}), Type{Face::bold, style().text}.centred());
        }
    }

    void draw_row(Pen& pen, const Row& row, Length top) {
        const Length base = top - style().text * 1.27;
        const Scope line = pen.within(Tag::row);
        {
            const Scope cell = pen.within(Tag::row_header);
            pen.paragraph(Role::text, {flow_.left(), base}, row.name, text(), name_width() - 4_pt,
                          leading(style().text));
        }
        for (int i = 0; i < coupons_of_board; ++i) {
            const Scope cell = pen.within(Tag::cell);
            const Length left = left_of(i);
            pen.box(Role::box, {{left, top - row_height(row)}, {left + column_width(), top}}, style().line);
            Length at = base;
            for (const auto& choices : choice_lines(row.choices)) {
                tick_boxes(pen, {left, at}, choices);
                at -= line_height();
            }
        }
    }

    Type choice_type() const { return {Face::condensed, style().small}; }
    Length choice_width(const std::string& choice) {
        return style().small + 2_pt + flow_.pen().width(choice, choice_type());
    }

    /// As many on a line as its column is wide.
    std::vector<std::vector<std::string>> choice_lines(const std::vector<std::string>& choices) {
        std::vector<std::vector<std::string>> lines;
        Length used;
        for (const std::string& choice : choices) {
            const Length wide = choice_width(choice) + 2_pt;
            if (lines.empty() || used + wide > column_width()) {
                lines.emplace_back();
                used = {};
            }
            lines.back().push_back(choice);
            used += wide;
        }
        return lines;
    }

    void tick_boxes(Pen& pen, Point base, const std::vector<std::string>& choices) {
        const Length side = style().small;
        Length used;
        for (const std::string& choice : choices) used += choice_width(choice);
        const Length gap = (column_width() - used) / static_cast<double>(choices.size() + 1);
        base.x += gap;
        for (const std::string& choice : choices) {
            tick_box(pen, {base.x, base.y - side * 0.15}, side);
            pen.text(Role::text, {base.x + side + 2_pt, base.y}, choice, choice_type());
            base.x += choice_width(choice) + gap;
        }
    }

    /// The job file's lines in a box at the right; beside it the words that its height has room for, the others below.
    /// All words above it where it leaves them no width.
    void where_it_goes() {
        std::vector<std::string> sentences =
            piece_.coupon ? coupon_on_record(*piece_.coupon, kit_, tape_) : coupon_place(piece_, kit_);
        sentences.push_back(coupon_reading_error(kit_, tape_));
        const std::vector<std::string> lines = coupon_lines(piece_, size_, tape_);
        Length block_width;
        for (const std::string& line : lines) block_width = std::max(block_width, flow_.pen().width(line, small()));
        block_width += style().small * 2;
        const Length beside = flow_.width() - block_width - 18_pt;
        flow_.heading(words(piece_.coupon ? "coupon.record" : "coupon.goes"));
        if (beside < least_beside) {
            for (const std::string& sentence : sentences) flow_.paragraph(Role::text, sentence, small());
            const Rect room = flow_.take(block_height(lines));
            block(lines, {room.low, {room.low.x + block_width, room.high.y}});
            return;
        }
        const std::size_t fitting = fitting_beside(sentences, beside, block_height(lines));
        const Rect room = flow_.take(block_height(lines));
        Pen pen = flow_.pen();
        Length base = first_base(room, small().size);
        for (std::size_t i = 0; i < fitting; ++i)
            base = pen.paragraph(Role::text, {room.low.x, base}, sentences[i], small(), beside, leading(small().size)) -
                   leading(small().size) * 1.2;
        block(lines, {{room.high.x - block_width, room.low.y}, room.high});
        flow_.skip(small().size * 0.5);
        for (std::size_t i = fitting; i < sentences.size(); ++i) flow_.paragraph(Role::text, sentences[i], small());
    }

    /// That coupons make trials for later jobs, and the lines of one that are known before it is bent.
    void as_trial() {
        // A trial tells nothing of a section: a moulded coupon would be read as a flat board's.
        if (piece_.cut.moulded()) {
            flow_.paragraph(Role::text, words("coupon.no_trial"), small());
            return;
        }
        const std::string lead = words("coupon.trial");
        const std::vector<std::string> lines = trial_lines(piece_, size_, tape_);
        constexpr std::size_t in_a_row = 3;
        const std::size_t full = (lines.size() + in_a_row - 1) / in_a_row;
        const auto rows = static_cast<double>(full);
        // The sentence stays with the lines that it speaks of.
        const Length step = leading(small().size);
        if (flow_.room() < flow_.pen().paragraph_height(lead, small(), flow_.width(), step) + step * (rows + 2))
            flow_.next_page();
        flow_.paragraph(Role::text, lead, small());
        const Rect room = flow_.take(leading(small().size) * rows);
        Pen pen = flow_.pen();
        for (std::size_t i = 0; i < lines.size(); ++i) {
            const std::size_t above = i / in_a_row;
            const auto row = static_cast<double>(above);
            const auto column = static_cast<double>(i % in_a_row);
            pen.text(Role::text,
                     {room.low.x + small().size + room.width() * (column / in_a_row),
                      first_base(room, small().size) - leading(small().size) * row},
                     lines[i], small());
        }
    }

    /// How many of the sentences find room, one below the other, in a column of this width and height.
    std::size_t fitting_beside(const std::vector<std::string>& sentences, Length width, Length height) {
        const Length step = leading(small().size);
        std::size_t fitting = 0;
        for (const std::string& sentence : sentences) {
            height -= flow_.pen().paragraph_height(sentence, small(), width, step) + step;
            if (height < Length{}) break;
            height -= step * 0.2;
            ++fitting;
        }
        return fitting;
    }

    Length block_height(const std::vector<std::string>& lines) const {
        return leading(small().size) * static_cast<double>(lines.size()) + small().size;
    }

    void block(const std::vector<std::string>& lines, const Rect& room) {
        Pen pen = flow_.pen();
        Length base = first_base(room, small().size) - small().size * 0.4;
        for (const std::string& line : lines) {
            pen.text(Role::text, {room.low.x + small().size, base}, line, small());
            base -= leading(small().size);
        }
        pen.box(Role::box, room, style().line);
    }

    Flow& flow_;
    const plan::Piece& piece_;
    bool strips_elsewhere_;
    const Kit& kit_;
    Tape tape_;
    CouponSize size_;
};

Draft record_page(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit, bool first) {
    const Tape tape(plan.header.units, kit.words);
    Draft draft = piece_page(plan, kit, piece.id, "coupon", "coupon", first);
    draft.subtitle = kit.words("coupon.subtitle", {{"what", piece_name(piece, kit)},
                                                   {"depth", tape.exact(piece.cut.depth)},
                                                   {"spacing", spacing_text(piece, kit, tape)}});
    return draft;
}

/// The record; one page where it can be.
Drafts record_pages(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit, bool one_kerf,
                    bool strips_elsewhere = false) {
    const auto new_page = [&](bool first) { return record_page(plan, piece, kit, first); };
    return on_one_page(kit, [&](Drafts& pages, const Kit& with, double white) {
        Flow flow(pages, with, new_page, {68_pt, 44_pt, white});
        CouponSheet sheet(flow, plan, piece, strips_elsewhere);
        sheet.draw();
        if (one_kerf) sheet.one_kerf();
    });
}

/// The test of one kerf takes its marks from the coupon's strip: below it, where the page has room, else on the next.
void add_one_kerf(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit, Length filled) {
    const bool below = drafts.back().page.height - filled - under_strips > one_kerf_room;
    const auto page = [&](bool first) {
        if (!first || !below) return record_page(plan, piece, kit, false);
        Draft strips = std::move(drafts.back());
        drafts.pop_back();
        return strips;
    };
    Flow flow(drafts, kit, page, {below ? filled : 68_pt, under_strips});
    CouponSheet(flow, plan, piece).one_kerf();
}

bool has_closing(const plan::Piece& piece) {
    const auto& runs = piece.blank().runs;
    return !std::all_of(runs.begin(), runs.end(), opens);
}

plan::Piece board_of_coupon(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    return coupon_board(piece, coupon_size(piece, plan.header.units),
                        kit.words("coupon.strip_name", {{"piece", piece.id}}));
}

}  // namespace

std::optional<plan::Piece> coupon_alone(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    if (has_closing(piece)) return std::nullopt;
    return board_of_coupon(plan, piece, kit);
}

void add_coupon_sheet(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit,
                      bool strips_elsewhere) {
    const bool closes = has_closing(piece);
    Drafts record = record_pages(plan, piece, kit, closes, strips_elsewhere);
    if (strips_elsewhere) {
        std::move(record.begin(), record.end(), std::back_inserter(drafts));
        return;
    }
    // Where it takes the record to a further page it goes with the coupon's strip.
    const bool apart = closes && record.size() > 1;
    if (apart) record = record_pages(plan, piece, kit, false);
    std::move(record.begin(), record.end(), std::back_inserter(drafts));
    const Length filled = add_coupon_strips(drafts, plan, piece, board_of_coupon(plan, piece, kit), kit);
    if (apart) add_one_kerf(drafts, plan, piece, kit, filled);
}

}  // namespace kerfpacket::sheets
