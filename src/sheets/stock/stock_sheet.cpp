#include "sheets/stock/stock_sheet.h"

#include <algorithm>
#include <array>

#include "sheets/layout/flow.h"
#include "sheets/layout/furniture.h"
#include "sheets/layout/one_page.h"
#include "sheets/stock/nest_pages.h"
#include "sheets/stock/offcut_coupons.h"
#include "sheets/stock/sheet_tickets.h"
#include "sheets/stock/sheet_words.h"
#include "sheets/stock/stick_drawing.h"
#include "sheets/stock/stock_words.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length bar_height = 26_pt;
constexpr Length below_bar = 4_pt;
constexpr Length between = 10_pt;

class Stock {
public:
    Stock(Flow& flow, const plan::Plan& job)
        : flow_(flow), job_(job), plan_(*job.stock_plan), tape_(plan_.unit, flow.kit().words) {}

    void draw() {
        purchase();
        tickets();
        add_sheet_tickets(flow_, plan_, tape_);
    }

private:
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return flow_.kit().words(key, values);
    }
    const fonts::Style& style() const { return flow_.style(); }
    Type text() const { return {Face::regular, style().text}; }
    Type small() const { return {Face::regular, style().small}; }

    bool priced() const {
        const auto has_prices = [](const auto& one) { return one.priced; };
        return std::any_of(plan_.sections.begin(), plan_.sections.end(), has_prices) ||
               std::any_of(plan_.sheets.begin(), plan_.sheets.end(), has_prices);
    }

    /// What a section comes to stands in the table of what to buy; where prices do, below it.
    bool totals_in_table() const {
        const auto buys = [](const auto& section) { return !section.to_buy.empty(); };
        return !priced() && std::any_of(plan_.sections.begin(), plan_.sections.end(), buys);
    }

    void purchase() {
        for (const std::string& note : stop_notes(plan_, flow_.kit()))
            flow_.paragraph(Role::caution, note, {Face::bold, style().text});
        flow_.heading(words("stock.buy"));
        const auto buys = [](const auto& section) { return !section.to_buy.empty(); };
        if (std::any_of(plan_.sections.begin(), plan_.sections.end(), buys) ||
            std::any_of(plan_.sheets.begin(), plan_.sheets.end(), buys))
            purchase_table();
        else flow_.paragraph(Role::text, words("stock.nothing"), text());
        flow_.skip(between);
        about();
        flow_.skip(below_bar);
        for (const std::string& note : plan_notes(plan_, flow_.kit(), tape_))
            flow_.paragraph(Role::text, note, small());
    }

    void purchase_table() {
        std::vector<FlowTable::Column> columns{{words("stock.column_board"), 0.36},
                                               {words("stock.column_length"), 0.22},
                                               {words("stock.column_count"), 0.12, false, true}};
        if (priced()) {
            columns.push_back({words("stock.column_each"), 0.15});
            columns.push_back({words("stock.column_all"), 0.15});
        } else if (totals_in_table()) {
            columns.push_back({words("stock.column_length_all"), 0.22});
            columns.push_back({words("stock.column_used"), 0.08});
        }
        FlowTable table(flow_, columns);
        for (const plan::StockSection& section : plan_.sections)
            for (const plan::Bought& bought : section.to_buy) {
                std::vector<std::string> cells =
                    row_of(section_text(section, flow_.kit(), tape_), stock_length(bought.length, flow_.kit(), tape_),
                           bought.count, bought.cents);
                if (totals_in_table() && &bought == &section.to_buy.back()) {
                    cells[cells.size() - 2] = stock_length(section.bought, flow_.kit(), tape_);
                    cells.back() = words("stock.percent", {{"n", used_text(section, flow_.kit())}});
                }
                table.row(cells);
            }
        for (const plan::SheetSection& section : plan_.sheets)
            for (const plan::BoughtSheets& bought : section.to_buy)
                table.row(row_of(sheet_board(section, flow_.kit(), tape_),
                                 sheet_size(bought.width, bought.length, flow_.kit(), tape_), bought.count,
                                 bought.cents));
    }

    std::vector<std::string> row_of(std::string board, std::string size, int count, std::optional<int> cents) const {
        std::vector<std::string> cells{std::move(board), std::move(size), std::to_string(count)};
        if (totals_in_table()) cells.resize(cells.size() + 2);
        if (!priced()) return cells;
        cells.push_back(cents ? price_text(*cents, flow_.kit()) : std::string());
        cells.push_back(cents ? price_text(std::int64_t{*cents} * count, flow_.kit()) : std::string());
        return cells;
    }

    /// What each section comes to, where a price tells it; whether less would do, what else is to be known: the same is
    /// said once.
    void about() {
        std::vector<std::string> proofs;
        std::vector<std::string> notes;
        const auto once = [](std::vector<std::string>& all, std::string text) {
            if (std::find(all.begin(), all.end(), text) == all.end()) all.push_back(std::move(text));
        };
        for (const plan::StockSection& section : plan_.sections) {
            if (!section.to_buy.empty()) once(proofs, proof_text(section, flow_.kit(), tape_));
            for (std::string& note : section_notes(plan_, section, flow_.kit(), tape_)) once(notes, std::move(note));
        }
        for (const plan::StockSection& section : plan_.sections) {
            if (section.to_buy.empty() || (!priced() && proofs.size() < 2)) continue;
            const std::string proof = proofs.size() > 1 ? " " + proof_text(section, flow_.kit(), tape_) : std::string();
            const std::string what = priced() ? total_text(section, flow_.kit(), tape_) + "."
                                              : section_text(section, flow_.kit(), tape_) + ":";
            flow_.paragraph(Role::text, what + proof, text());
        }
        if (proofs.size() == 1) flow_.paragraph(Role::text, proofs.front(), text());
        for (const std::string& note : notes) flow_.paragraph(Role::caution, note, text());
        for (const plan::SheetSection& section : plan_.sheets) about_sheets(section);
    }

    void about_sheets(const plan::SheetSection& section) {
        if (const std::string total = sheets_total(section, flow_.kit(), tape_); !total.empty())
            flow_.paragraph(Role::text, total + ". " + sheets_proof(plan_, section, flow_.kit()), text());
        for (const std::string& note : sheets_notes(section, flow_.kit(), tape_))
            flow_.paragraph(Role::caution, note, text());
    }

    void tickets() {
        const bool any = std::any_of(plan_.sections.begin(), plan_.sections.end(),
                                     [](const auto& section) { return !section.sticks.empty(); });
        if (!any) return;
        flow_.heading(words("stock.cut"));
        flow_.paragraph(Role::text, how_to_cut(plan_, flow_.kit(), tape_), text());
        int n = 0;
        std::vector<Coupons> left_over;
        const std::vector<OffcutCoupons> of_sections = offcut_coupons(job_, flow_.kit());
        for (std::size_t at = 0; at < plan_.sections.size(); ++at) {
            const plan::StockSection& section = plan_.sections[at];
            const OffcutCoupons& coupons = of_sections[at];
            for (std::size_t i = 0; i < section.sticks.size(); ++i)
                ticket(section, section.sticks[i], ++n, coupons.of_sticks[i], coupons.rest[i]);
            left_over.insert(left_over.end(), coupons.no_offcut.begin(), coupons.no_offcut.end());
        }
        flow_.skip(between);
        if (!left_over.empty())
            flow_.item(Role::text, words("stock.coupons_left", {{"coupons", coupon_list(left_over)}}), text());
    }

    Length longest() const {
        Length most;
        for (const plan::StockSection& section : plan_.sections)
            for (const plan::CutStick& stick : section.sticks) most = std::max(most, stick.length);
        return most;
    }

    std::string coupon_list(const std::vector<Coupons>& all) const {
        std::string list;
        for (const Coupons& coupons : all)
            list += (list.empty() ? "" : "; ") + words("stock.coupons", {{"n", std::to_string(coupons.count)},
                                                                         {"piece", coupons.piece},
                                                                         {"length", tape_.with_unit(coupons.length)}});
        return list;
    }

    /// The drawing stays with the heading and the first cut.
    void ticket(const plan::StockSection& section, const plan::CutStick& stick, int n,
                const std::vector<Coupons>& coupons, Length rest) {
        const Type name{Face::bold, style().text};
        const Length head = leading(style().text) + bar_height + below_bar;
        flow_.skip(between);
        if (flow_.room() < head + leading(style().text) * (1.1 + double(stick.blanks.size() + coupons.size()) * 1.4))
            flow_.next_page();
        const Rect block = flow_.take(head);
        Pen pen = flow_.pen();
        const Length base = first_base(block, style().text);
        const std::string offcut =
            coupons.empty() ? offcut_text(stick, flow_.kit(), tape_)
                            : words(rest >= plan_.least_offcut ? "stock.offcut_rest_keep" : "stock.offcut_rest",
                                    {{"rest", tape_.with_unit(rest)}});
        const Length beside = pen.width(offcut, text()) + between;
        const std::string title = stick_text(section, stick, n, flow_.kit(), tape_);
        pen.text(Role::text, {block.low.x, base}, title, pen.fitting(title, name, block.width() - beside));
        pen.text(Role::text, {block.high.x, base}, offcut, text().at_right());
        const Rect bar{{block.low.x, block.low.y + below_bar}, {block.high.x, block.low.y + below_bar + bar_height}};
        draw_stick(pen, bar, plan_, stick, n, longest(), tape_, offcut);
        cuts(section, stick, coupons);
    }

    /// The blanks, then the coupons that the offcut gives.
    void cuts(const plan::StockSection& section, const plan::CutStick& stick, const std::vector<Coupons>& coupons) {
        FlowTable table(flow_, ticket_columns(flow_.kit()));
        const std::vector<Length> ends = running_ends(plan_, stick);
        for (std::size_t i = 0; i < ends.size(); ++i) {
            const plan::StockBlank& blank = stick.blanks[i];
            ticket_row(flow_, table,
                       {std::to_string(i + 1), blank_to_cut(section, blank, flow_.kit(), tape_),
                        tape_.with_unit(blank.length), tape_.with_unit(ends[i]), ""});
        }
        for (const Coupons& some : coupons)
            ticket_row(flow_, table,
                       {"", words("stock.coupon_cuts", {{"n", std::to_string(some.count)}, {"piece", some.piece}}),
                        tape_.with_unit(some.length), words("stock.from_offcut"), ""});
    }

    Flow& flow_;
    const plan::Plan& job_;
    const plan::StockPlan& plan_;
    Tape tape_;
};

}  // namespace

void add_stock_sheet(Drafts& drafts, const plan::Plan& plan, const Kit& kit) {
    if (!plan.stock_plan) return;
    const auto new_page = [&](bool first) {
        Draft draft = new_draft(plan, "stock", Orientation::portrait);
        draft.title = kit.words("stock.title");
        draft.subtitle = kit.words("stock.subtitle");
        if (first) draft.outline = kit.words("stock.outline");
        return draft;
    };
    const std::array nests{plan::nest_plan({&plan}, plan::Nested::segments),
                           plan::nest_plan({&plan}, plan::Nested::ribs)};
    add_on_one_page(drafts, kit, [&](Drafts& pages, const Kit& with, double white) {
        Flow flow(pages, with, new_page, {68_pt, 44_pt, white});
        Stock(flow, plan).draw();
        for (const plan::NestPlan& nest : nests) add_nest_pages(flow, nest, Tape(plan.header.units, kit.words));
    });
}

}  // namespace kerfpacket::sheets
