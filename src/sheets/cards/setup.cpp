#include "sheets/cards/setup.h"

#include <array>
#include <vector>

#include "bend/saw.h"
#include "sheets/cards/coupon_size.h"
#include "sheets/cards/setup_drawing.h"
#include "sheets/cards/setup_errors.h"
#include "sheets/layout/furniture.h"
#include "sheets/words/settings_words.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

/// Nothing of the card's text stands below this: the check bar is there.
constexpr Length lowest = 72_pt;
constexpr Length row = 21_pt;
constexpr Length remark_height = 13_pt;

/// Fills the card from the top; starts a second page where a section no longer fits.
class Card {
public:
    Card(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit)
        : drafts_(drafts), plan_(plan), piece_(piece), kit_(kit), tape_(plan.header.units, kit.words) {}

    void draw() {
        start_page();
        drafts_.back().outline = words("setup.outline", {{"piece", piece_.id}});
        figures();
        heading("setup.end_view", words("setup.hold_against"), end_view_height(piece_));
        {
            Pen pen = this->pen();
            draw_end_view(pen, plan_, piece_, tape_, y_);
        }
        y_ -= end_view_height(piece_);
        heading("setup.edge_view", words("setup.must_match"), edge_view_height(piece_));
        {
            Pen pen = this->pen();
            draw_edge_view(pen, piece_, tape_, y_);
        }
        y_ -= edge_view_height(piece_);
        steps();
        if (!piece_.rear_limit) trial_table();
        coupon();
        table(small_errors(piece_, kit_, tape_));
        too_deep();
        shop_rules();
    }

private:
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return kit_.words(key, values);
    }
    Pen pen() { return {drafts_.back().page, kit_}; }
    Length right() { return drafts_.back().page.width - side_margin; }
    const fonts::Style& style() const { return kit_.style; }

    void start_page() {
        Draft draft = new_draft(plan_, "setup", Orientation::portrait);
        draft.page.piece = piece_.id;
        draft.tag = piece_.id;
        draft.title = words("setup.title");
        draft.subtitle =
            words("setup.subtitle", {{"what", piece_name(piece_, kit_)}, {"board", board_text(piece_, kit_, tape_)}});
        draft.scale = Scale::full;
        drafts_.push_back(std::move(draft));
        y_ = drafts_.back().page.height - 76_pt;
    }

    /// A section's heading; starts a new page first when the section would not fit.
    void heading(const char* key, const std::string& aside, Length content) {
        const Length above = 25_pt;
        if (y_ - above - content < lowest) start_page();
        Pen pen = this->pen();
        y_ -= above;
        section(pen, side_margin, right(), y_, words(key), aside);
        y_ -= 6.5_pt;
    }

    std::string spacer_text() const {
        if (!piece_.spacer) return words("setup.by_trial");
        return *piece_.spacer > Length() ? tape_.exact(*piece_.spacer) : words("setup.none");
    }

    void figures() {
        Pen pen = this->pen();
        const std::array<std::pair<const char*, std::string>, 4> cells{{{"setup.depth", tape_.exact(piece_.kerf_depth)},
                                                                        {"setup.web", tape_.exact(piece_.web())},
                                                                        {"setup.kerf", tape_.exact(piece_.kerf)},
                                                                        {"setup.spacer", spacer_text()}}};
        const Length step = (right() - side_margin) / 4;
        Length x = side_margin;
        for (const auto& [key, value] : cells) {
            const Scope pair = pen.within(Tag::paragraph);
            if (x > side_margin) pen.line(Role::furniture, {x - 10_pt, y_ - 36_pt}, {x - 10_pt, y_}, style().line);
            pen.text(Role::text, {x, y_ - 8_pt}, words(key),
                     pen.fitting(words(key), {Face::regular, style().small}, step - 14_pt));
            Type type{Face::bold, style().huge};
            if (pen.width(value, type) > step - 14_pt) type = {Face::condensed_bold, style().huge};
            if (pen.width(value, type) > step - 14_pt) type.size = style().title;
            pen.text(Role::text, {x, y_ - 32_pt}, value, type);
            x += step;
        }
        const Length base = y_ - 55_pt;
        const std::string blade = words("setup.blade", {{"diameter", tape_.exact(plan_.saw.blade_diameter.value)}});
        // A board that bends both ways has more to say of its kerfs.
        const std::array texts{kerf_side(piece_, kit_), tick_meaning(piece_, kit_), blade};
        const Length gap = 16_pt;
        Type type{piece_.bends_both_ways() ? Face::condensed_bold : Face::bold, style().text};
        type = pen.fitting(texts[0] + texts[1] + texts[2], type, right() - side_margin - gap * 2);
        Length at = side_margin;
        for (const std::string& text : texts) at += pen.text(Role::caution, {at, base}, text, type) + gap;
        const std::string verdict = words("setup.verdict", {{"verdict", verdict_word(piece_.bend.verdict, kit_)},
                                                            {"coupon", coupon_state(piece_, kit_)}});
        const Type verdict_type = Type{Face::bold, style().small}.at_right();
        const std::string zero = zero_end(piece_, kit_);
        y_ = base - 14_pt;
        const Length room = right() - side_margin - pen.width(verdict, verdict_type) - 8_pt;
        const Type zero_type = pen.fitting(zero, {Face::regular, style().small}, room);
        pen.text(Role::text, {side_margin, y_}, zero, zero_type);
        if (pen.width(zero, zero_type) > room) y_ -= 11_pt;
        pen.text(Role::caution, {right(), y_}, verdict, verdict_type);
        y_ -= 4_pt;
    }

    /// One thing to do, with a blank to write what was measured where one is wanted; `beside` is taken at the right.
    void step(const std::string& text, bool blank, Length beside = {}) {
        Pen pen = this->pen();
        const Scope list = pen.going_on(Tag::list);
        const Scope item = pen.within(Tag::list_item);
        y_ -= row;
        tick_box(pen, {side_margin, y_ - 2_pt}, 11_pt);
        const Length room = right() - side_margin - 20_pt - (blank ? 92_pt : beside);
        pen.text(Role::text, {side_margin + 20_pt, y_}, text, pen.fitting(text, {Face::regular, style().text}, room));
        if (!blank) return;
        pen.line(Role::box, {right() - 86_pt, y_ - 2_pt}, {right() - 22_pt, y_ - 2_pt}, style().line);
        pen.text(Role::box, {right(), y_}, tape_.unit_name(), Type{Face::regular, style().small}.at_right());
    }

    /// Said of the step above it.
    void remark(const std::string& text, bool strong) {
        Pen pen = this->pen();
        const Scope list = pen.going_on(Tag::list);
        const Scope item = pen.going_on(Tag::list_item);
        y_ -= remark_height;
        pen.text(
            strong ? Role::caution : Role::text, {side_margin + 20_pt, y_}, text,
            pen.fitting(text, {strong ? Face::bold : Face::regular, style().small}, right() - side_margin - 20_pt));
    }

    /// What a shorter spacer costs; nothing where none is needed.
    std::string shorter_spacer() const {
        if (!piece_.spacer || *piece_.spacer <= 0_mm || !piece_.spacer_shorter) return {};
        const bool inch = tape_.unit() == measure::Unit::inch;
        if (*piece_.spacer_shorter <= 0_mm) return words(inch ? "setup.no_spacer_inch" : "setup.no_spacer_mm");
        return words(inch ? "setup.spacer_shorter_inch" : "setup.spacer_shorter_mm",
                     {{"spacer", tape_.with_unit(*piece_.spacer_shorter)}});
    }

    void steps() {
        const std::string shorter = shorter_spacer();
        const bool short_travel = piece_.width_reached && *piece_.width_reached < piece_.width;
        const int remarks = (shorter.empty() ? 0 : 1) + (short_travel ? 1 : 0);
        heading("setup.order", words("setup.tick_or_write"), row * 7 + remark_height * remarks);
        y_ += 3_pt;
        const std::string depth = tape_.exact(piece_.kerf_depth);
        step(words("setup.manual"), false);
        step(piece_.spacer && *piece_.spacer > Length()
                 ? words("setup.unplugged_spacer", {{"depth", depth}, {"spacer", spacer_text()}})
                 : words("setup.unplugged", {{"depth", depth}}),
             false);
        if (!shorter.empty()) remark(shorter, false);
        const std::string needed = tape_.exact(piece_.travel_needed.value_or(piece_.width));
        step(plan_.saw.travel
                 ? words("setup.travel", {{"needed", needed}, {"travel", tape_.exact(plan_.saw.travel->value)}})
                 : words("setup.travel_unknown", {{"needed", needed}}),
             !plan_.saw.travel);
        if (short_travel)
            remark(words("setup.reached",
                         {{"reached", tape_.with_unit(*piece_.width_reached)}, {"width", tape_.exact(piece_.width)}}),
                   true);
        step(words("setup.test_back"), true);
        step(words(tape_.unit() == measure::Unit::inch ? "setup.test_front_inch" : "setup.test_front_mm"), true);
        step(words("setup.web_thinnest"), true);
        step(words("setup.kerf_measured", {{"kerf", tape_.exact(piece_.kerf)}}), true);
    }

    /// The spacer for each depth at which a trial groove may meet the fence.
    void trial_table() {
        heading("setup.trial", words("setup.trial_aside"), row * 2 + remark_height);
        Pen pen = this->pen();
        const int columns = 6;
        const Length label = 130_pt;
        const Length step = (right() - side_margin - label) / columns;
        const auto at_fence = [&](int i) { return piece_.kerf_depth * (static_cast<double>(i) / columns); };
        const auto table_row = [&](Length down, const char* key, Face face, auto figure) {
            const Scope line = pen.within(Tag::row);
            {
                const Scope cell = pen.within(Tag::row_header);
                pen.text(Role::text, {side_margin, y_ - down}, words(key),
                         pen.fitting(words(key), {face, style().small}, label));
            }
            for (int i = 0; i < columns; ++i) {
                const Scope cell = pen.within(Tag::cell);
                pen.text(Role::text, {side_margin + label + step * (i + 1), y_ - down}, figure(i),
                         Type{face, style().small}.at_right());
            }
        };
        {
            const Scope table = pen.within(Tag::table);
            table_row(16_pt, "setup.trial_depth", Face::regular, [&](int i) { return tape_.exact_plain(at_fence(i)); });
            table_row(33_pt, "setup.trial_spacer", Face::bold, [&](int i) {
                const Length limit =
                    bend::rear_limit_from_trial(plan_.saw.blade_diameter.value, piece_.kerf_depth, at_fence(i));
                return tape_.plain(bend::spacer(limit, tape_.unit()));
            });
        }
        const std::string enter = words("setup.trial_enter");
        pen.text(Role::text, {side_margin, y_ - 47_pt}, enter,
                 pen.fitting(enter, {Face::regular, style().small}, right() - side_margin));
        y_ -= 50_pt;
    }

    void coupon() {
        // Where spacing or bend vary, the coupon is made and bent as at the kerf with the least to spare.
        const CouponSize size = coupon_size(piece_, tape_.unit());
        const fonts::Words::Values sheet{{"sheet", words("coupon.title")}, {"spacing", tape_.with_unit(size.spacing)}};
        heading("setup.coupon",
                words(varied_spacing(piece_) ? "setup.coupon_aside_spacing" : "setup.coupon_aside", sheet), row * 2);
        y_ += 3_pt;
        const std::array<std::string, 2> lines{
            words("setup.coupon_make", {{"length", tape_.exact(size.length)}}),
            words(size.side == bend::KerfsOn::outside ? "setup.coupon_bend" : "setup.coupon_bend_close",
                  {{"radius", tape_.with_unit(piece_.finish_radius)}})};
        const std::array<const char*, 2> signs{"setup.set_by", "setup.date"};
        for (std::size_t i = 0; i < lines.size(); ++i) {
            const Length signature = 170_pt;
            step(lines.at(i), false, signature + 8_pt);
            Pen pen = this->pen();
            const Scope list = pen.going_on(Tag::list);
            const Scope item = pen.going_on(Tag::list_item);
            const Length x = right() - signature;
            const Length used = pen.text(Role::text, {x, y_}, words(signs.at(i)), {Face::regular, style().text});
            pen.line(Role::box, {x + used + 6_pt, y_ - 2_pt}, {right(), y_ - 2_pt}, style().line);
        }
    }

    /// A section that is a table, moved to the next page as a whole.
    void table(const FigureTable& table) {
        const Length above = 25_pt;
        if (y_ - above - height_of(table) < lowest) start_page();
        Pen pen = this->pen();
        y_ = draw_table(pen, side_margin, right(), y_ - above, table) - 4_pt;
    }

    void shop_rules() {
        const std::vector<std::string>& rules = kit_.words.list("shop.setup_rules");
        if (rules.empty()) return;
        heading("shop.heading", "", row * static_cast<double>(rules.size()));
        y_ += 3_pt;
        for (const std::string& rule : rules) step(rule, false);
    }

    void too_deep() {
        table(deep_kerf_table(piece_, kit_, tape_));
        const Type type{Face::bold, style().text};
        for (const plan::DeepKerf& kerf : piece_.deep_kerfs) {
            if (y_ - 60_pt < lowest) start_page();
            Pen pen = this->pen();
            const Scope list = pen.going_on(Tag::list);
            const Scope item = pen.within(Tag::list_item);
            y_ -= row;
            tick_box(pen, {side_margin, y_ - 2_pt}, 11_pt);
            y_ = pen.paragraph(Role::caution, {side_margin + 20_pt, y_}, deep_kerf_text(kerf, kit_, tape_), type,
                               right() - side_margin - 20_pt, 15_pt);
        }
    }

    Drafts& drafts_;
    const plan::Plan& plan_;
    const plan::Piece& piece_;
    const Kit& kit_;
    Tape tape_;
    Length y_;  ///< how far the page is filled, from the bottom edge
};

}  // namespace

void add_setup_card(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    Card(drafts, plan, piece, kit).draw();
}

}  // namespace kerfpacket::sheets
