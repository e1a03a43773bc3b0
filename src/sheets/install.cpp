#include "sheets/install.h"

#include <array>

#include "sheets/furniture.h"
#include "sheets/sign_off.h"
#include "sheets/wording.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length leading = 14_pt;
constexpr Length line_gap = 5_pt;
constexpr Length log_row = 24_pt;
constexpr Length log_head = 15_pt;

/// The columns of the glue log end at these parts of its width; the first holds what was done.
constexpr std::array log_ends{0.2, 0.34, 0.56, 0.67, 0.78, 0.89, 1.0};

class Card {
public:
    Card(page::Page& page, const Kit& kit, const plan::Piece& piece, const Tape& tape)
        : pen_(page, kit), kit_(kit), piece_(piece), tape_(tape), y_(pen_.from_top(statement_line)) {}

    void draw() {
        const std::string& first = words("install.statement");
        pen_.text(Role::caution, {side_margin, y_}, first,
                  pen_.fitting(first, {Face::bold, style().text}, right() - side_margin));
        y_ -= 12_pt;
        part("before");
        blank_line("install.moisture");
        heading("install.log");
        log();
        part("fastening");
        part("finish");
        sign_off(pen_, side_margin, right(), 52_pt, {words("install.installed_by"), words("page.checked_by")},
                 words("page.date"));
    }

private:
    const fonts::Style& style() const { return kit_.style; }
    const std::string& words(std::string_view key) const { return kit_.words(key); }
    Length right() const { return pen_.page_width() - side_margin; }

    void heading(const std::string& key) {
        y_ -= 20_pt;
        section(pen_, side_margin, right(), y_, words(key));
        y_ -= 8_pt;
    }

    /// Lines to tick, with the piece's own figures in them.
    void part(const std::string& name) {
        heading("install." + name);
        const fonts::Words::Values figures{{"web", tape_.exact(piece_.web())},
                                           {"land", tape_.with_unit(piece_.least_spacing - piece_.kerf)},
                                           {"side", kerf_side(piece_, kit_)}};
        for (const std::string& line : kit_.words.list("install." + name + "_lines", figures)) {
            const Scope list = pen_.going_on(Tag::list);
            const Scope item = pen_.within(Tag::list_item);
            y_ -= leading;
            tick_box(pen_, {side_margin, y_ - 2_pt}, 11_pt);
            y_ = pen_.paragraph(Role::caution, {side_margin + 20_pt, y_}, line, {Face::regular, style().text},
                                right() - side_margin - 20_pt, leading) -
                 line_gap;
        }
    }

    void blank_line(const char* key) {
        const Scope list = pen_.going_on(Tag::list);
        const Scope item = pen_.within(Tag::list_item);
        y_ -= leading;
        const Type type{Face::regular, style().text};
        tick_box(pen_, {side_margin, y_ - 2_pt}, 11_pt);
        const Length x =
            side_margin + 20_pt + pen_.text(Role::text, {side_margin + 20_pt, y_}, words(key), type) + 8_pt;
        pen_.line(Role::box, {x, y_ - 2_pt}, {x + 60_pt, y_ - 2_pt}, style().line);
        y_ -= line_gap;
    }

    /// What is done in the order of the work, then two empty rows for what is done twice.
    void log() {
        const Type small{Face::regular, style().small};
        const Length width = right() - side_margin;
        const std::vector<std::string>& columns = kit_.words.list("install.log_columns");
        const std::vector<std::string>& steps = kit_.words.list("install.log_steps");
        const Length top = y_ - 4_pt;
        const Length foot = top - log_head - log_row * static_cast<double>(steps.size() + 2);
        {
            const Scope table = pen_.within(Tag::table);
            log_heads(columns, top, foot);
            y_ = top - log_head;
            for (std::size_t row = 0; row < steps.size() + 2; ++row)
                log_line(row < steps.size() ? steps[row] : std::string());
        }
        y_ = pen_.paragraph(Role::caution, {side_margin, y_ - 12_pt}, words("install.log_note"), small, width, 11_pt) -
             6_pt;
    }

    void log_heads(const std::vector<std::string>& columns, Length top, Length foot) {
        const Scope line = pen_.within(Tag::row);
        const Length width = right() - side_margin;
        Length x = side_margin;
        for (std::size_t i = 0; i < log_ends.size(); ++i) {
            const Scope cell = pen_.within(Tag::header_cell);
            const Length end = side_margin + width * log_ends.at(i);
            pen_.text(Role::text, {x + 3_pt, top - 11_pt}, columns.at(i),
                      pen_.fitting(columns.at(i), {Face::regular, style().small}, end - x - 5_pt));
            if (i + 1 < log_ends.size()) pen_.line(Role::box, {end, foot}, {end, top}, style().hair);
            x = end;
        }
        pen_.box(Role::box, {{side_margin, foot}, {right(), top}}, style().line);
    }

    /// What was done, and empty cells to fill in.
    void log_line(const std::string& what) {
        const Scope line = pen_.within(Tag::row);
        pen_.line(Role::box, {side_margin, y_}, {right(), y_}, style().hair);
        {
            const Scope cell = pen_.within(Tag::row_header);
            pen_.text(Role::text, {side_margin + 3_pt, y_ - log_row + 8_pt}, what,
                      pen_.fitting(what, {Face::regular, style().text}, (right() - side_margin) * log_ends[0] - 6_pt));
        }
        pen_.empty_cells(static_cast<int>(log_ends.size()) - 1);
        y_ -= log_row;
    }

    Pen pen_;
    const Kit& kit_;
    const plan::Piece& piece_;
    const Tape& tape_;
    Length y_;
};

}  // namespace

void add_install_card(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    const Tape tape(plan.header.units, kit.words);
    Draft draft = new_draft(plan, "install", Orientation::portrait);
    draft.page.piece = piece.id;
    draft.tag = piece.id;
    draft.title = kit.words("install.title");
    draft.subtitle = board_text(piece, kit, tape);
    draft.outline = kit.words("install.outline", {{"piece", piece.id}});
    Card(draft.page, kit, piece, tape).draw();
    drafts.push_back(std::move(draft));
}

}  // namespace kerfpacket::sheets
