#include "sheets/cards/install.h"

#include <algorithm>
#include <array>
#include <cmath>

#include "sheets/layout/flow.h"
#include "sheets/layout/one_page.h"
#include "sheets/layout/sign_off.h"
#include "sheets/splay/legs_drawing.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

/// Of a row of the glue log, for a hand to write in.
Length log_row(const fonts::Style& style) { return style.text * 1.9; }

/// The columns of the glue log end at these parts of its width; the first holds what was done.
constexpr std::array log_ends{0.2, 0.34, 0.56, 0.67, 0.78, 0.89, 1.0};

class Card {
public:
    Card(Flow& flow, const plan::Piece& piece, const Tape& tape) : flow_(flow), piece_(piece), tape_(tape) {}

    void draw() {
        flow_.paragraph(Role::caution, words("install.statement"), {Face::bold, style().text});
        part("before");
        joints();
        legs();
        flow_.blank_item({{words("install.moisture"), 60_pt}});
        flow_.heading(words("install.log"));
        log();
        flow_.paragraph(Role::caution, words("install.log_note"), {Face::regular, style().small});
        part("fastening");
        part("finish");
        sign_off(flow_, {words("install.installed_by"), words("page.checked_by")});
    }

private:
    const fonts::Style& style() const { return flow_.style(); }
    const std::string& words(std::string_view key) const { return flow_.kit().words(key); }

    /// The least land, as a figure of the tape that it does not fall short of.
    std::string least_land() const {
        const Length land = piece_.cut.least_spacing - piece_.cut.kerf;
        const Length step = tape_.unit() == measure::Unit::inch ? Length::inches(1.0 / 16) : 1_mm;
        return tape_.with_unit(step * std::floor(land / step + 1e-9));
    }

    /// Lines to tick, with the piece's own figures in them.
    void part(const std::string& name) {
        flow_.heading(words("install." + name));
        const fonts::Words::Values figures{{"web", web_text(piece_, flow_.kit(), tape_)},
                                           {"land", least_land()},
                                           {"side", kerf_side(piece_, flow_.kit())}};
        for (const std::string& line : flow_.kit().words.list("install." + name + "_lines", figures))
            flow_.item(Role::caution, line, {Face::regular, style().text});
        if (name == "fastening" && piece_.moisture_move > 0_mm)
            flow_.item(Role::caution,
                       flow_.kit().words("install.moves", {{"move", tape_.with_unit(piece_.moisture_move)}}),
                       {Face::regular, style().text});
    }

    /// Which blank goes on first, and how each joint is glued.
    void joints() {
        if (!piece_.spliced()) return;
        flow_.heading(words("install.joints"));
        for (std::size_t i = 0; i < piece_.joints.size(); ++i)
            flow_.item(Role::text, joint_text(piece_, i, flow_.kit(), tape_), {Face::regular, style().text});
        for (const std::string& line :
             flow_.kit().words.list(piece_.splay ? "install.joint_lines_splayed" : "install.joint_lines"))
            flow_.item(Role::caution, line, {Face::regular, style().text});
        if (std::any_of(piece_.joints.begin(), piece_.joints.end(), [](const plan::Joint& one) { return one.in_bend; }))
            flow_.item(Role::caution, words("install.joint_block"), {Face::regular, style().text});
    }

    /// The flat boards below a splayed head.
    void legs() {
        if (!piece_.splay || piece_.leg_boards.empty()) return;
        flow_.heading(flow_.kit().words("flat.legs", {{"angle", degrees_text(piece_.splay->alpha, flow_.kit())}}));
        const Rect room = flow_.take(legs_height(piece_, style()));
        Pen pen = flow_.pen();
        draw_legs(pen, room, piece_, tape_);
    }

    /// What is done in the order of the work, then two empty rows for what is done twice.
    void log() {
        const std::vector<std::string>& columns = flow_.kit().words.list("install.log_columns");
        std::vector<std::string> steps = flow_.kit().words.list("install.log_steps");
        steps.resize(steps.size() + 2);
        const Length head = leading(style().small);
        const Rect block = flow_.take(head + log_row(style()) * static_cast<double>(steps.size()) + 8_pt);
        const Rect room{{block.low.x, block.low.y + 3_pt}, {block.high.x, block.high.y - 5_pt}};
        Pen pen = flow_.pen();
        const Scope table = pen.within(Tag::table);
        log_heads(pen, columns, room);
        Length top = room.high.y - head;
        for (const std::string& step : steps) {
            log_line(pen, step, top);
            top -= log_row(style());
        }
    }

    void log_heads(Pen& pen, const std::vector<std::string>& columns, const Rect& room) {
        const Scope line = pen.within(Tag::row);
        Length x = room.low.x;
        for (std::size_t i = 0; i < log_ends.size(); ++i) {
            const Scope cell = pen.within(Tag::header_cell);
            const Length end = room.low.x + room.width() * log_ends.at(i);
            pen.text(Role::text, {x + 3_pt, room.high.y - style().small}, columns.at(i),
                     pen.fitting(columns.at(i), {Face::regular, style().small}, end - x - 5_pt));
            if (i + 1 < log_ends.size()) pen.line(Role::box, {end, room.low.y}, {end, room.high.y}, style().hair);
            x = end;
        }
        pen.box(Role::box, room, style().line);
    }

    /// What was done, and empty cells to fill in.
    void log_line(Pen& pen, const std::string& what, Length top) {
        const Scope line = pen.within(Tag::row);
        pen.line(Role::box, {flow_.left(), top}, {flow_.right(), top}, style().hair);
        {
            const Scope cell = pen.within(Tag::row_header);
            pen.text(Role::text, {flow_.left() + 3_pt, top - log_row(style()) / 2 - style().text * 0.36}, what,
                     pen.fitting(what, {Face::regular, style().text}, flow_.width() * log_ends[0] - 6_pt));
        }
        pen.empty_cells(static_cast<int>(log_ends.size()) - 1);
    }

    Flow& flow_;
    const plan::Piece& piece_;
    const Tape& tape_;
};

}  // namespace

void add_install_card(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit) {
    const Tape tape(plan.header.units, kit.words);
    const auto new_page = [&](bool first) {
        Draft draft = piece_page(plan, kit, piece.id, "install", "install", first);
        draft.subtitle = board_text(piece, kit, tape);
        return draft;
    };
    add_on_one_page(drafts, kit, [&](Drafts& pages, const Kit& with, double white) {
        Flow flow(pages, with, new_page, {68_pt, 44_pt, white});
        Card(flow, piece, tape).draw();
    });
}

}  // namespace kerfpacket::sheets
