#include "sheets/bid/bid_sheet.h"

#include "plan/stopped.h"
#include "sheets/layout/finish.h"
#include "sheets/layout/flow.h"
#include "sheets/stock/offcut_coupons.h"
#include "sheets/stock/sheet_words.h"
#include "sheets/stock/stock_words.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

using job::Rate;

/// Where the shop gives no rate: a line to write on.
const std::string blank = "__________";
constexpr Length between = 10_pt;

class Bid {
public:
    Bid(Flow& flow, const plan::House& house, const job::Rates& rates, int sheets)
        : flow_(flow),
          house_(house),
          rates_(rates),
          sheets_(sheets),
          counts_(plan::bid_counts(house, coupons_asked(house, flow.kit()))),
          sums_(plan::bid_sums(counts_, house, rates, sheets)),
          not_made_(plan::not_made(house.jobs)),
          tape_(house.first().header.units, flow.kit().words) {}

    void draw() {
        if (const auto stopped = plan::stopped_boards(house_.jobs); !stopped.empty())
            flow_.paragraph(Role::caution, words("stopped", {{"boards", names_text(stopped)}}), strong());
        if (!not_made_.empty())
            flow_.paragraph(Role::caution, words("not_made", {{"pieces", names_text(not_made_)}}), strong());
        flow_.paragraph(Role::text, words("how"), small());
        flow_.skip(between);
        if (house_.several()) jobs();
        work();
        flow_.skip(between);
        costs();
        flow_.skip(between);
        for (const std::string& note : notes()) flow_.paragraph(Role::text, note, small());
    }

private:
    std::string words(const std::string& key, const fonts::Words::Values& values = {}) const {
        return flow_.kit().words("bid." + key, values);
    }
    Type strong() const { return {Face::bold, flow_.style().text}; }
    Type small() const { return {Face::regular, flow_.style().small}; }
    Unit unit() const { return house_.first().header.units; }

    std::string figure(const std::optional<double>& value, int places) const {
        return value ? number(*value, places, flow_.kit().words) : blank;
    }
    std::string rate(Rate rate) const {
        const auto& given = rates_.of(rate);
        return given ? shortest(*given, flow_.kit().words) : blank;
    }
    /// "41.2 ft", "12.6 m".
    std::string long_text(Length length) const {
        return words(unit() == Unit::inch ? "feet" : "metres",
                     {{"n", number(plan::long_length(length, unit()), 1, flow_.kit().words)}});
    }

    /// What a kind of work is, with what else is known of it.
    std::string name_of(Rate rate) const {
        std::string name = words(std::string(job::rate_keys.at(static_cast<std::size_t>(rate))));
        if (rate == Rate::minutes_kerf) return name + ", " + long_text(counts_.kerf_stroke);
        if (rate == Rate::minutes_rip) return name + ", " + long_text(counts_.ripped);
        if (rate == Rate::minutes_segment) return name + ", " + long_text(counts_.curved_sawing);
        return name;
    }

    void jobs() {
        flow_.heading(words("jobs"));
        FlowTable table(flow_, {{words("column_job"), 0.3}, {words("column_title"), 0.7}});
        for (const plan::Plan* job : house_.jobs)
            table.row({words("job", {{"number", job->header.number}, {"revision", job->header.revision}}),
                       job->header.title});
        flow_.skip(between);
    }

    void work() {
        flow_.heading(words("work"));
        FlowTable table(flow_, {{words("column_work"), 0.52},
                                {words("column_count"), 0.14, true},
                                {words("column_minutes_each"), 0.17, true},
                                {words("column_minutes"), 0.17, true}});
        for (const plan::Work& one : counts_.work) {
            const auto& each = rates_.of(one.rate);
            table.row({name_of(one.rate), std::to_string(one.count), rate(one.rate),
                       figure(each ? std::optional(*each * one.count) : std::nullopt, 1)});
        }
        table.row({words("other_work"), "", "", blank});
        table.row({words("minutes_all"), "", "", figure(sums_.minutes, 1)}, Face::bold);
    }

    void costs() {
        flow_.heading(words("costs"));
        FlowTable table(flow_, {{words("column_what"), 0.4},
                                {words("column_amount"), 0.26, true},
                                {words("column_each"), 0.17, true},
                                {words("column_sum"), 0.17, true}});
        table.row({words("hour"),
                   sums_.minutes ? words("hours", {{"n", number(*sums_.minutes / 60, 2, flow_.kit().words)}}) : blank,
                   rate(Rate::hour), figure(sums_.labour, 2)});
        boards(table);
        table.row({words("paper"), std::to_string(sheets_), rate(Rate::paper), figure(sums_.paper, 2)});
        table.row({words("glue"), glue_text(), rate(Rate::glue), figure(sums_.glue, 2)});
        table.row({words("sharpening"), blade_text(), rate(Rate::sharpening), figure(sums_.blade, 2)});
        table.row({words("other_costs"), "", "", blank});
        table.row({not_made_.empty() ? words("all") : words("all_without", {{"pieces", names_text(not_made_)}}), "", "",
                   figure(sums_.all(), 2)},
                  Face::bold);
    }

    /// A row for each kind of board that is bought.
    void boards(FlowTable& table) {
        const bool known = house_.stock != nullptr && counts_.unplanned == 0;
        if (!known) {
            table.row({words("boards"), words("blanks", {{"n", std::to_string(counts_.blanks)}}), blank, blank});
            return;
        }
        for (const plan::StockSection& section : house_.stock->sections) {
            if (section.casing) continue;
            for (const plan::Bought& bought : section.to_buy)
                bought_row(
                    table,
                    section_text(section, flow_.kit(), tape_) + ", " + stock_length(bought.length, flow_.kit(), tape_),
                    bought.count, bought.cents);
        }
        for (const plan::SheetSection& section : house_.stock->sheets)
            for (const plan::BoughtSheets& bought : section.to_buy)
                bought_row(table,
                           sheet_board(section, flow_.kit(), tape_) + " " +
                               sheet_size(bought.width, bought.length, flow_.kit(), tape_),
                           bought.count, bought.cents);
    }

    void bought_row(FlowTable& table, std::string what, int count, std::optional<int> cents) const {
        table.row({std::move(what), std::to_string(count), cents ? price_text(*cents, flow_.kit()) : blank,
                   cents ? price_text(std::int64_t{*cents} * count, flow_.kit()) : blank});
    }

    std::string glue_text() const {
        const std::string area = words(unit() == Unit::inch ? "square_feet" : "square_metres",
                                       {{"n", number(plan::glue_area(counts_, unit()), 1, flow_.kit().words)}});
        const auto containers = plan::glue_containers(counts_, unit(), rates_);
        return area + (containers ? words("containers", {{"n", std::to_string(*containers)}}) : std::string());
    }

    std::string blade_text() const {
        const auto& lasts = rates_.of(Rate::blade_lasts);
        std::string stroke = long_text(counts_.kerf_stroke);
        if (!lasts) return stroke;
        const Length life = unit() == Unit::inch ? Length::inches(*lasts * 12) : Length::mm(*lasts * 1000);
        return words("of_life", {{"stroke", stroke}, {"life", long_text(life)}});
    }

    std::vector<std::string> notes() const {
        std::vector<std::string> notes{words("note_rates"), words("note_counts"), words("note_glue")};
        if (counts_.unplanned > 0) notes.push_back(words("note_unplanned"));
        return notes;
    }

    Flow& flow_;
    const plan::House& house_;
    const job::Rates& rates_;
    int sheets_;
    plan::BidCounts counts_;
    plan::BidSums sums_;
    std::vector<std::string> not_made_;
    Tape tape_;
};

}  // namespace

page::Document make_bid(const plan::House& house, const job::Rates& rates, int sheets, const Kit& kit) {
    const plan::Plan& plan = house.first();
    Drafts drafts;
    Flow flow(drafts, kit, [&](bool first) {
        Draft draft = new_draft(plan, "bid", Orientation::portrait);
        draft.title = kit.words("bid.title");
        draft.subtitle = house.several() ? kit.words("bid.subtitle_jobs", {{"n", std::to_string(house.jobs.size())}})
                                         : kit.words("bid.subtitle");
        if (first) draft.outline = kit.words("bid.title");
        return draft;
    });
    Bid(flow, house, rates, sheets).draw();
    page::Document document;
    document.title = kit.words("bid.title") + " " + plan.header.number;
    document.subject = kit.words("bid.title");
    document.language = kit.words("page.language");
    document.date = plan.header.date;
    for (std::size_t i = 0; i < drafts.size(); ++i) {
        finish_page(drafts[i], plan, kit, i + 1, drafts.size());
        take_page(document, std::move(drafts[i]));
    }
    return document;
}

}  // namespace kerfpacket::sheets
