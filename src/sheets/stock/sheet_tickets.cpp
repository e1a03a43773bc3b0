#include "sheets/stock/sheet_tickets.h"

#include <algorithm>

#include "sheets/layout/furniture.h"
#include "sheets/stock/sheet_drawing.h"
#include "sheets/stock/sheet_words.h"
#include "sheets/stock/stock_words.h"

namespace kerfpacket::sheets {
namespace {

constexpr double cut_share = 0.09;
constexpr double initials_share = 0.13;
/// A square sheet as wide as the page leaves no room for its table.
constexpr Length highest = 300_pt;
constexpr Length between = 10_pt;
constexpr Length below_title = 4_pt;

class Tickets {
public:
    Tickets(Flow& flow, const plan::StockPlan& plan, const Tape& tape) : flow_(flow), plan_(plan), tape_(tape) {}

    void ticket(const plan::SheetSection& section, const plan::CutSheet& sheet, int n) {
        const Type name{Face::bold, text()};
        const Length height = sheet_height(sheet, flow_.width(), highest);
        const Length head = leading(text()) + height + below_title;
        flow_.skip(between);
        if (flow_.room() < head + leading(text()) * 5) flow_.next_page();
        const Rect block = flow_.take(head);
        Pen pen = flow_.pen();
        const std::string title = sheet_text(section, sheet, n, kit(), tape_);
        pen.text(Role::text, {block.low.x, first_base(block, text())}, title, pen.fitting(title, name, block.width()));
        draw_sheet(pen, {{block.low.x, block.low.y + below_title}, {block.high.x, block.low.y + below_title + height}},
                   plan_, sheet, n, tape_);
        rips(sheet);
        crosscuts(sheet);
    }

private:
    const Kit& kit() const { return flow_.kit(); }
    std::string words(const std::string& key) const { return kit().words("stock." + key); }
    Length text() const { return flow_.style().text; }

    void rips(const plan::CutSheet& sheet) {
        FlowTable table(flow_, ticket_columns(words("column_rip"), words("column_strip"), words("column_fence"),
                                              words("column_edge"), kit()));
        for (std::size_t i = 0; i < sheet.strips.size(); ++i) {
            const plan::CutStrip& strip = sheet.strips[i];
            ticket_row(flow_, table,
                       {std::to_string(i + 1), strip_text(strip, i, kit(), tape_), tape_.exact(strip.width),
                        tape_.with_unit(strip_end(plan_, strip)), ""});
        }
        table.row({"", left_over_text(sheet, kit(), tape_), "", "", ""});
    }

    /// "2.1" is the first cut of strip 2.
    void crosscuts(const plan::CutSheet& sheet) {
        flow_.skip(between);
        FlowTable table(flow_, ticket_columns(kit()));
        for (std::size_t n = 0; n < sheet.strips.size(); ++n) {
            const plan::CutStick& cut = sheet.strips[n].cut;
            const std::vector<Length> ends = running_ends(plan_, cut);
            for (std::size_t i = 0; i < ends.size(); ++i)
                ticket_row(flow_, table,
                           {std::to_string(n + 1) + "." + std::to_string(i + 1), blank_name(cut.blanks[i], kit()),
                            tape_.with_unit(cut.blanks[i].length), tape_.with_unit(ends[i]), ""});
            table.row({"", offcut_text(cut, kit(), tape_), "", "", ""});
        }
    }

    Flow& flow_;
    const plan::StockPlan& plan_;
    const Tape& tape_;
};

}  // namespace

std::vector<FlowTable::Column> ticket_columns(const std::string& cut, const std::string& what, const std::string& stop,
                                              const std::string& ends, const Kit& kit) {
    return {{cut, cut_share},
            {what, 0.33},
            {stop, 0.19, false, true},
            {ends, 0.26},
            {kit.words("stock.column_initials"), initials_share}};
}

std::vector<FlowTable::Column> ticket_columns(const Kit& kit) {
    return ticket_columns(kit.words("stock.column_cut"), kit.words("stock.column_blank"),
                          kit.words("stock.column_stop"), kit.words("stock.column_ends"), kit);
}

void ticket_row(Flow& flow, FlowTable& table, const std::vector<std::string>& cells) {
    const Rect row = table.row(cells);
    Pen pen = flow.pen();
    const Length side = flow.style().text;
    const Length base = first_base(row, side) - 1.5_pt;
    tick_box(pen, {row.low.x + row.width() * cut_share - side * 2, base}, side);
    pen.line(Role::box, {row.high.x - row.width() * initials_share, base}, {row.high.x, base}, flow.style().hair);
}

void add_sheet_tickets(Flow& flow, const plan::StockPlan& plan, const Tape& tape) {
    const bool any = std::any_of(plan.sheets.begin(), plan.sheets.end(),
                                 [](const auto& section) { return !section.sheets.empty(); });
    if (!any) return;
    flow.heading(flow.kit().words("stock.cut_sheets"));
    flow.paragraph(Role::text, how_to_rip(plan, flow.kit(), tape), {Face::regular, flow.style().text});
    Tickets tickets(flow, plan, tape);
    int n = 0;
    for (const plan::SheetSection& section : plan.sheets)
        for (const plan::CutSheet& sheet : section.sheets) tickets.ticket(section, sheet, ++n);
}

}  // namespace kerfpacket::sheets
