#include "sheets/changes.h"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "sheets/layout/flow.h"

namespace kerfpacket::sheets {
namespace {

class Sheet {
public:
    Sheet(Drafts& drafts, const Revision& before, const Revision& now, const Superseded& superseded, const Kit& kit)
        : superseded_(superseded),
          revisions_{{"before", before.plan.header.revision}, {"now", now.plan.header.revision}},
          flow_(drafts, kit, [&](bool first) { return new_page(now.plan, kit, first); }) {
        flow_.paragraph(Role::caution, words(none() ? "changes.none_superseded" : "changes.statement"),
                        {Face::bold, kit.style.text});
    }

    void values(const std::vector<ChangedValue>& values) {
        flow_.heading(words("changes.values"));
        if (values.empty()) return sentence("changes.same_values");
        FlowTable table(flow_, {{words("changes.column_piece"), 0.1},
                                {words("changes.column_value"), 0.3},
                                {words("changes.column_was"), 0.3},
                                {words("changes.column_now"), 0.3}});
        const std::string nothing = words("changes.nothing");
        for (const ChangedValue& value : values)
            table.row({value.piece.empty() ? words("changes.whole_job") : value.piece, value.what,
                       value.was.empty() ? nothing : value.was, value.now.empty() ? nothing : value.now});
    }

    void effects(const std::vector<Effect>& effects) {
        flow_.heading(words("changes.effects"));
        FlowTable table(flow_, {{"", 0.1}, {"", 0.9}});
        for (const Effect& effect : effects)
            table.row({effect.piece, fmt::format("{}", fmt::join(effect.words, "; "))});
    }

    void sheets() {
        if (none()) return;
        flow_.heading(words("changes.sheets"));
        FlowTable table(flow_, {{words("changes.column_sheet"), 0.7}, {words("changes.column_page"), 0.3}});
        for (const IndexEntry& sheet : superseded_.sheets) {
            const std::string first = std::to_string(sheet.first + 1);
            const Rect row = table.row(
                {sheet.title, sheet.first == sheet.last ? first : first + "-" + std::to_string(sheet.last + 1)});
            flow_.pen().link(row, sheet.first);
        }
        for (const std::string& title : superseded_.gone) table.row({title, words("changes.sheet_gone")});
        sentence("changes.same_sheets");
    }

private:
    bool none() const { return superseded_.sheets.empty() && superseded_.gone.empty(); }
    std::string words(std::string_view key) const { return flow_.kit().words(key, revisions_); }
    void sentence(const char* key) { flow_.paragraph(Role::text, words(key), {Face::regular, flow_.style().text}); }

    Draft new_page(const plan::Plan& plan, const Kit& kit, bool first) const {
        Draft draft = new_draft(plan, "changes", Orientation::portrait);
        draft.title = kit.words("changes.title", revisions_);
        draft.subtitle = kit.words("changes.subtitle", revisions_);
        if (first) draft.outline = kit.words("changes.outline", revisions_);
        return draft;
    }

    const Superseded& superseded_;
    fonts::Words::Values revisions_;
    Flow flow_;
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
