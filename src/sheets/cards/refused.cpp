#include "sheets/cards/refused.h"

#include "sheets/changes.h"
#include "sheets/layout/furniture.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length leading = 14_pt;
constexpr Length gap = 5_pt;
constexpr Length lowest = 46_pt;
constexpr double value_column = 0.35;  ///< of the width

class Sheet {
public:
    Sheet(Drafts& drafts, const plan::Plan& plan, const plan::Refused& refused, const Kit& kit)
        : drafts_(drafts), plan_(plan), refused_(refused), kit_(kit), tape_(plan.header.units, kit.words) {}

    void draw() {
        start_page();
        drafts_.back().outline = words("refused.outline", {{"piece", refused_.id}});
        statement();
        heading("refused.why");
        for (const job::Diagnostic& reason : refused_.reasons) {
            item(reason.message, Face::bold);
            if (reason.at.line > 0)
                item(words("refused.line", {{"line", std::to_string(reason.at.line)}}), Face::regular);
        }
        heading("refused.do");
        for (const job::Diagnostic& reason : refused_.reasons)
            if (!reason.hint.empty()) item(reason.hint, Face::regular);
        item(words("refused.again"), Face::regular);
        heading("refused.asked");
        for (const job::Value& value : refused_.asked)
            if (value.key != "id") row(value_words(value, kit_, tape_));
    }

private:
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return kit_.words(key, values);
    }
    Pen pen() { return {drafts_.back().page, kit_}; }
    Length width() const { return drafts_.back().page.width - side_margin * 2; }
    const fonts::Style& style() const { return kit_.style; }

    void start_page() {
        Draft draft = new_draft(plan_, "refused", Orientation::portrait);
        draft.page.piece = refused_.id;
        draft.tag = refused_.id;
        draft.title = words("refused.title");
        draft.subtitle = refused_name(refused_, kit_);
        y_ = draft.page.height - 66_pt;
        drafts_.push_back(std::move(draft));
    }

    void need(Length height) {
        if (y_ - height < lowest) start_page();
    }

    void statement() {
        Pen pen = this->pen();
        const Length top = y_;
        const Length inset = 12_pt;
        const std::string first = words("refused.do_not_cut", {{"piece", refused_.id}});
        y_ -= 26_pt;
        pen.text(Role::caution, {side_margin + inset, y_}, first,
                 pen.fitting(first, {Face::bold, style().title}, width() - inset * 2));
        y_ = pen.paragraph(Role::caution, {side_margin + inset, y_ - 20_pt}, words("refused.statement"),
                           {Face::regular, style().text}, width() - inset * 2, leading) -
             12_pt;
        pen.box(Role::caution, {{side_margin, y_}, {side_margin + width(), top}}, style().end);
    }

    void heading(const char* key) {
        need(70_pt);
        y_ -= 26_pt;
        Pen pen = this->pen();
        section(pen, side_margin, side_margin + width(), y_, words(key));
        y_ -= 6_pt;
    }

    void item(const std::string& text, Face face) {
        const Type type{face, style().text};
        need(leading + pen().paragraph_height(text, type, width(), leading));
        Pen pen = this->pen();
        const Scope list = pen.going_on(Tag::list);
        const Scope item = pen.within(Tag::list_item);
        y_ = pen.paragraph(Role::caution, {side_margin, y_ - leading}, text, type, width(), leading) - gap;
    }

    void row(const std::pair<std::string, std::string>& texts) {
        const Type type{Face::regular, style().text};
        const Length room = width() * (1 - value_column);
        need(leading + pen().paragraph_height(texts.second, type, room, leading));
        Pen pen = this->pen();
        const Scope table = pen.going_on(Tag::table);
        const Scope line = pen.within(Tag::row);
        y_ -= leading;
        {
            const Scope cell = pen.within(Tag::row_header);
            pen.text(Role::text, {side_margin, y_}, texts.first,
                     pen.fitting(texts.first, type, width() * value_column - 6_pt));
        }
        const Scope cell = pen.within(Tag::cell);
        y_ = pen.paragraph(Role::text, {side_margin + width() * value_column, y_}, texts.second, type, room, leading) -
             2_pt;
    }

    Drafts& drafts_;
    const plan::Plan& plan_;
    const plan::Refused& refused_;
    const Kit& kit_;
    Tape tape_;
    Length y_;
};

}  // namespace

void add_refused(Drafts& drafts, const plan::Plan& plan, const plan::Refused& refused, const Kit& kit) {
    Sheet(drafts, plan, refused, kit).draw();
}

std::string refused_name(const plan::Refused& refused, const Kit& kit) {
    return kit.words(refused.kind == plan::Kind::arch_liner ? "piece.arch_liner" : "piece.wall_board");
}

std::string refused_ids(const plan::Plan& plan) {
    std::string ids;
    for (const plan::Refused& one : plan.refused) ids += (ids.empty() ? "" : ", ") + one.id;
    return ids;
}

}  // namespace kerfpacket::sheets
