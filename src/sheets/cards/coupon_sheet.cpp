#include "sheets/cards/coupon_sheet.h"

#include <algorithm>
#include <array>
#include <optional>

#include "sheets/cards/coupon_drawing.h"
#include "sheets/cards/coupon_words.h"
#include "sheets/layout/furniture.h"
#include "sheets/templates/template_drawing.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length heading_height = 35_pt;  ///< from what stands above a heading to its rule
constexpr Length leading = 13_pt;
constexpr Length box = 11_pt;
constexpr Length row_height = 20_pt;
constexpr Length row_name_width = 128_pt;
constexpr int coupons = 3;
constexpr int rows = 8;
constexpr Length lowest = 44_pt;  ///< above the footer's rule
constexpr Length between_coupons = 6_pt;
constexpr Length block_width = 236_pt;

class CouponSheet {
public:
    CouponSheet(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit)
        : drafts_(drafts),
          plan_(plan),
          piece_(piece),
          kit_(kit),
          tape_(plan.header.units, kit.words),
          size_(coupon_size(piece, tape_.unit())) {
        start_page();
        drafts_.back().outline = words("coupon.outline", {{"piece", piece_.id}});
    }

    void draw() {
        make();
        need(heading_height + coupon_drawing_height(size_.side));
        heading("coupon.measure", "coupon.measure_aside");
        draw_coupon(*pen_, size_.side, y_);
        y_ -= coupon_drawing_height(size_.side);
        need(heading_height + 22_pt + row_height * rows);
        write();
        where_it_goes();
        if (std::any_of(piece_.blank().runs.begin(), piece_.blank().runs.end(),
                        [](const plan::BendRun& run) { return !opens(run); }))
            one_kerf();
    }

private:
    const fonts::Style& style() const { return kit_.style; }
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return kit_.words(key, values);
    }
    Type text() const { return {Face::regular, style().text}; }
    Type small() const { return {Face::regular, style().small}; }

    void start_page() {
        Draft draft = new_draft(plan_, "coupon", Orientation::portrait);
        draft.page.piece = piece_.id;
        draft.tag = piece_.id;
        draft.title = words("coupon.title");
        draft.subtitle = words("coupon.subtitle", {{"what", piece_name(piece_, kit_)},
                                                   {"depth", tape_.exact(piece_.cut.depth)},
                                                   {"spacing", spacing_text(piece_, kit_, tape_)}});
        right_ = draft.page.width - side_margin;
        y_ = draft.page.height - 58_pt;
        drafts_.push_back(std::move(draft));
        pen_.emplace(drafts_.back().page, kit_);
    }

    /// Goes on to a further page where what comes next would run into the footer.
    void need(Length height) {
        if (y_ - height < lowest) start_page();
    }

    void heading(const char* key, const char* aside = nullptr) {
        y_ -= heading_height;
        section(*pen_, side_margin, right_, y_ + 6.5_pt, words(key), aside == nullptr ? std::string() : words(aside));
    }

    void make() {
        heading("coupon.make");
        list(coupon_steps(piece_, size_, kit_, tape_));
    }

    /// Things to do, each with its box.
    void list(const std::vector<std::string>& steps) {
        for (const std::string& step : steps) {
            const Scope list = pen_->going_on(Tag::list);
            const Scope item = pen_->within(Tag::list_item);
            y_ -= leading + 5_pt;
            tick_box(*pen_, {side_margin, y_ - 2_pt}, box);
            y_ = pen_->paragraph(Role::text, {side_margin + 20_pt, y_}, step, text(), right_ - side_margin - 20_pt,
                                 leading);
        }
    }

    /// A table with a column for each coupon.
    void write() {
        heading("coupon.write");
        const std::string unit = tape_.unit_name();
        y_ -= 16_pt;
        const Scope table = pen_->within(Tag::table);
        column_heads();
        y_ -= 6_pt;
        row(words("coupon.write_chord", {{"unit", unit}}));
        row(words("coupon.write_rise", {{"unit", unit}}));
        row(words("coupon.write_held"), ways_to_hold());
        row(words("coupon.write_result"), ends_of_bending());
        row(words("coupon.write_kerf_number"));
        row(words("coupon.write_web", {{"unit", unit}}));
        row(words("coupon.write_kerf", {{"unit", unit}}));
        row(words("coupon.write_date"));
    }

    void column_heads() {
        const Scope line = pen_->within(Tag::row);
        pen_->empty_cells(1);
        for (int i = 0; i < coupons; ++i) {
            const Scope cell = pen_->within(Tag::header_cell);
            pen_->text(Role::text, {left_of(i) + column_width() / 2, y_},
                       words("coupon.column", {{"n", std::to_string(i + 1)}}),
                       Type{Face::bold, style().text}.centred());
        }
    }

    Length column_width() const {
        return (right_ - side_margin - row_name_width - between_coupons * (coupons - 1)) / coupons;
    }
    Length left_of(int coupon) const {
        return side_margin + row_name_width + (column_width() + between_coupons) * coupon;
    }

    /// A blank for each coupon, or the job file's words to tick.
    void row(const std::string& name, const std::vector<std::string>& choices = {}) {
        y_ -= row_height;
        Type type = text();
        if (pen_->width(name, type) > row_name_width - 4_pt) type.face = Face::condensed;
        const Scope line = pen_->within(Tag::row);
        {
            const Scope cell = pen_->within(Tag::row_header);
            pen_->text(Role::text, {side_margin, y_ + 6_pt}, name, type);
        }
        for (int i = 0; i < coupons; ++i) {
            const Scope cell = pen_->within(Tag::cell);
            const Length left = left_of(i);
            pen_->box(Role::box, {{left, y_}, {left + column_width(), y_ + row_height}}, style().line);
            if (!choices.empty()) tick_boxes(left, choices);
        }
    }

    void tick_boxes(Length left, const std::vector<std::string>& choices) {
        const Type type{Face::condensed, style().small};
        const Length side = 9_pt;
        Length used;
        for (const std::string& choice : choices) used += side + 2_pt + pen_->width(choice, type);
        const Length gap = (column_width() - used) / static_cast<double>(choices.size() + 1);
        Length x = left + gap;
        for (const std::string& choice : choices) {
            tick_box(*pen_, {x, y_ + (row_height - side) / 2}, side);
            x += side + 2_pt;
            x += pen_->text(Role::text, {x, y_ + 6.5_pt}, choice, type) + gap;
        }
    }

    /// Where kerfs close: how a single one in scrap tells at which radius.
    void one_kerf() {
        need(heading_height + one_kerf_drawing_height + 6 * (leading + 5_pt));
        heading("coupon.one_kerf", "coupon.one_kerf_aside");
        draw_one_kerf(*pen_, y_);
        y_ -= one_kerf_drawing_height + 6_pt;
        list(one_kerf_steps(piece_, size_, kit_, tape_));
    }

    /// Words at the left, the job file's lines in a box at the right.
    void where_it_goes() {
        std::vector<std::string> sentences =
            piece_.coupon ? coupon_on_record(*piece_.coupon, kit_, tape_) : coupon_place(piece_, kit_);
        sentences.push_back(coupon_reading_error(kit_, tape_));
        const Length width = right_ - side_margin - block_width - 18_pt;
        const std::vector<std::string> lines = coupon_lines(piece_, size_, tape_);
        Length height = 3_pt;
        for (const std::string& sentence : sentences)
            height += 12_pt * static_cast<double>(broken(*pen_, sentence, small(), width).size()) + 3_pt;
        need(heading_height + std::max(height, leading * static_cast<double>(lines.size()) + 19_pt));
        heading(piece_.coupon ? "coupon.record" : "coupon.goes");
        Length base = y_ - 3_pt;
        for (const std::string& sentence : sentences)
            base = pen_->paragraph(Role::text, {side_margin, base - leading}, sentence, small(), width, 12_pt) - 2_pt;
        y_ = std::min(base, block(lines, y_ - 8_pt));
    }

    /// Returns its lower edge.
    Length block(const std::vector<std::string>& lines, Length top) {
        const Length left = right_ - block_width;
        Length base = top - 4_pt;
        for (const std::string& line : lines) {
            base -= leading;
            pen_->text(Role::text, {left + 9_pt, base}, line, small());
        }
        pen_->box(Role::box, {{left, base - 7_pt}, {right_, top}}, style().line);
        return base - 7_pt;
    }

    Drafts& drafts_;
    std::optional<Pen> pen_;  ///< of the last page
    const plan::Plan& plan_;
    const plan::Piece& piece_;
    const Kit& kit_;
    Tape tape_;
    CouponSize size_;
    Length right_;
    Length y_;  ///< how far the page is filled, from the bottom edge
};

}  // namespace

void add_coupon_sheet(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    CouponSheet(drafts, plan, piece, kit).draw();
}

}  // namespace kerfpacket::sheets
