#include "sheets/changes.h"

#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "sheets/furniture.h"
#include "sheets/pen.h"
#include "sheets/tape.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length leading = 13_pt;
constexpr Length row_gap = 4_pt;
constexpr Length column_gap = 6_pt;
constexpr Length lowest = 46_pt;

class Sheet {
public:
    Sheet(Drafts& drafts, const Revision& before, const Revision& now, const Superseded& superseded, const Kit& kit)
        : drafts_(drafts),
          now_(now.plan),
          superseded_(superseded),
          kit_(kit),
          revisions_{{"before", before.plan.header.revision}, {"now", now.plan.header.revision}} {
        start_page();
        const std::string first = words(none() ? "changes.none_superseded" : "changes.statement");
        y_ = pen().paragraph(Role::caution, {side_margin, y_}, first, {Face::bold, style().text}, right() - side_margin,
                             14_pt);
    }

    void values(const std::vector<ChangedValue>& values) {
        heading(words("changes.values"));
        if (values.empty()) {
            sentence(words("changes.same_values"));
            return;
        }
        const std::vector<double> shares{0.1, 0.3, 0.3, 0.3};
        row({words("changes.column_piece"), words("changes.column_value"), words("changes.column_was"),
             words("changes.column_now")},
            shares, true);
        const std::string nothing = words("changes.nothing");
        for (const ChangedValue& value : values)
            row({value.piece.empty() ? words("changes.whole_job") : value.piece, value.what,
                 value.was.empty() ? nothing : value.was, value.now.empty() ? nothing : value.now},
                shares);
    }

    void effects(const std::vector<Effect>& effects) {
        heading(words("changes.effects"));
        for (const Effect& effect : effects)
            row({effect.piece, fmt::format("{}", fmt::join(effect.words, "; "))}, {0.1, 0.9});
    }

    void sheets() {
        if (none()) return;
        heading(words("changes.sheets"));
        const std::vector<double> shares{0.7, 0.3};
        row({words("changes.column_sheet"), words("changes.column_page")}, shares, true);
        for (const IndexEntry& sheet : superseded_.sheets) {
            const std::string first = std::to_string(sheet.first + 1);
            row({sheet.title, sheet.first == sheet.last ? first : first + "-" + std::to_string(sheet.last + 1)},
                shares);
            pen().link({{side_margin, y_}, {right(), y_ + leading}}, sheet.first);
        }
        for (const std::string& title : superseded_.gone) row({title, words("changes.sheet_gone")}, shares);
        y_ -= row_gap;
        sentence(words("changes.same_sheets"));
    }

private:
    const fonts::Style& style() const { return kit_.style; }
    bool none() const { return superseded_.sheets.empty() && superseded_.gone.empty(); }
    std::string words(std::string_view key) const { return kit_.words(key, revisions_); }
    Pen pen() { return {drafts_.back().page, kit_}; }
    Length right() const { return drafts_.back().page.width - side_margin; }

    void start_page() {
        const bool first = drafts_.empty();
        Draft draft = new_draft(now_, "changes", Orientation::portrait);
        draft.title = words("changes.title");
        draft.subtitle = words("changes.subtitle");
        if (first) draft.outline = words("changes.outline");
        y_ = draft.page.height - statement_line;
        drafts_.push_back(std::move(draft));
    }

    /// A heading stays with what follows it.
    void heading(const std::string& text) {
        if (y_ - 24_pt - 4 * leading < lowest) start_page();
        y_ -= 24_pt;
        Pen pen = this->pen();
        section(pen, side_margin, right(), y_, text);
        y_ -= 5_pt;
    }

    /// Goes on to a further page where lines of this height no longer fit.
    void need(Length height) {
        if (y_ - leading - height < lowest) start_page();
    }

    void sentence(const std::string& text) {
        const Type type{Face::regular, style().text};
        const Length width = right() - side_margin;
        need(pen().paragraph_height(text, type, width, leading));
        y_ = pen().paragraph(Role::text, {side_margin, y_ - leading}, text, type, width, leading) - row_gap;
    }

    /// One row of a table, each column broken into lines where its room asks for it.
    void row(const std::vector<std::string>& cells, const std::vector<double>& shares, bool heads = false) {
        const Type type{Face::regular, heads ? style().small : style().text};
        const auto column = [&](std::size_t i) { return (right() - side_margin) * shares.at(i); };
        Length height;
        for (std::size_t i = 0; i < cells.size(); ++i)
            height = std::max(height, pen().paragraph_height(cells[i], type, column(i) - column_gap, leading));
        need(height);
        Pen pen = this->pen();
        const Scope table = pen.going_on(Tag::table);
        const Scope line = pen.within(Tag::row);
        Length x = side_margin;
        for (std::size_t i = 0; i < cells.size(); ++i) {
            const Scope cell = pen.within(heads ? Tag::header_cell : i == 0 ? Tag::row_header : Tag::cell);
            pen.paragraph(Role::text, {x, y_ - leading}, cells[i], type, column(i) - column_gap, leading);
            x += column(i);
        }
        y_ -= leading + height + row_gap;
    }

    Drafts& drafts_;
    const plan::Plan& now_;
    const Superseded& superseded_;
    const Kit& kit_;
    fonts::Words::Values revisions_;
    Length y_;
};

}  // namespace

void add_changes(Drafts& drafts, const Revision& before, const Revision& now, const Superseded& superseded,
                 const Kit& kit) {
    const Changes changes = changes_between(before, now, kit);
    Drafts pages;
    Sheet sheet(pages, before, now, superseded, kit);
    sheet.values(changes.values);
    sheet.effects(changes.effects);
    sheet.sheets();
    for (Draft& page : pages) drafts.push_back(std::move(page));
}

}  // namespace kerfpacket::sheets
