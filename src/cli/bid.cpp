#include "cli/bid.h"

#include <algorithm>

#include <fmt/format.h>

#include "cli/house.h"
#include "cli/json.h"
#include "cli/report.h"
#include "cli/resources.h"
#include "cli/sheet_target.h"
#include "output/pdf.h"
#include "plan/stopped.h"
#include "sheets/bid/bid_sheet.h"
#include "sheets/stock/offcut_coupons.h"

namespace kerfpacket::cli {
namespace {

Json or_null(const std::optional<double>& value) { return value ? Json(*value) : Json(); }

/// JSON of schema 1: lengths in millimetres, areas in square millimetres, prices as they are given; null where a rate
/// is missing.
std::string json_of(const plan::House& house, const job::Rates& rates, int sheets, const sheets::Kit& kit) {
    const plan::BidCounts counts = plan::bid_counts(house, sheets::coupons_asked(house, kit));
    const plan::BidSums sums = plan::bid_sums(counts, house, rates, sheets);
    Json jobs = Json::array();
    for (const plan::Plan* job : house.jobs)
        jobs.push_back({{"number", job->header.number}, {"revision", job->header.revision}});
    Json work = Json::array();
    for (const plan::Work& one : counts.work)
        work.push_back({{"rate", std::string(job::rate_keys.at(static_cast<std::size_t>(one.rate)))},
                        {"count", one.count},
                        {"minutes_each", or_null(rates.of(one.rate))}});
    const Json all{{"schema", 1},
                   {"jobs", jobs},
                   {"work", work},
                   {"blanks", counts.blanks},
                   {"kerf_stroke_mm", mm(counts.kerf_stroke)},
                   {"ripped_mm", mm(counts.ripped)},
                   {"curved_sawing_mm", mm(counts.curved_sawing)},
                   {"glue_area_mm2", counts.glue_area_mm2},
                   {"sheets_of_paper", sheets},
                   {"blanks_without_stock", counts.unplanned},
                   {"do_not_cut", plan::stopped_boards(house.jobs)},
                   {"not_in_bid", plan::not_made(house.jobs)},
                   {"minutes", or_null(sums.minutes)},
                   {"labour", or_null(sums.labour)},
                   {"stock", or_null(sums.stock)},
                   {"paper", or_null(sums.paper)},
                   {"glue", or_null(sums.glue)},
                   {"blade", or_null(sums.blade)},
                   {"sum", or_null(sums.all())}};
    return all.dump(2) + "\n";
}

job::Rates rates_of(const std::vector<Planned>& jobs) {
    const Planned* with = with_table(
        jobs, "[rates]", [](const Planned& job) { return job.beside.rates.any(); },
        [](const Planned& a, const Planned& b) { return a.beside.rates.given == b.beside.rates.given; });
    return with == nullptr ? job::Rates{} : with->beside.rates;
}

/// Sheets of paper that the packets take, each in its own language; nothing where one cannot be printed, which is told.
std::optional<int> sheets_of(const PlannedHouse& house, Console& console, const std::filesystem::path& home) {
    std::size_t sheets = 0;
    for (const Planned& job : house.jobs) {
        const Resources resources(home, job.plan.header, job.inputs.words);
        const std::optional<page::Document> packet = laid_out(job, resources.kit(), {}, console);
        console.doing("");
        if (!packet) return std::nullopt;
        sheets += packet->pages.size();
    }
    return static_cast<int>(sheets);
}

}  // namespace

Status bid(const BidChoice& choice, Console& console, const std::filesystem::path& home) {
    const std::optional<PlannedHouse> house = planned_house(choice.jobs, choice.job, console);
    if (!house) return Status::errors;
    const job::Rates rates = rates_of(house->jobs);
    const std::optional<int> sheets = sheets_of(*house, console, home);
    if (!sheets) return Status::errors;
    const Planned& first = house->first();
    const Resources resources(home, first.plan.header, first.inputs.words);
    if (choice.json) {
        console.result(json_of(house->house(), rates, *sheets, resources.kit()));
        return house->status();
    }
    const SheetTarget target(choice.out, choice.force, filed_under(choice.jobs, choice.job, choice.out), "-bid.pdf");
    target.write(output::pdf(sheets::make_bid(house->house(), rates, *sheets, resources.kit()), resources.faces()),
                 console);
    const auto count =
        std::count_if(rates.given.begin(), rates.given.end(), [](const auto& rate) { return rate.has_value(); });
    console.done(fmt::format("{}: {} of {} rates are given, the others are blanks\n", target.file().string(), count,
                             job::rate_count));
    for (const Planned& job : house->jobs) console.message(verdict_line(job.plan));
    return house->status();
}

}  // namespace kerfpacket::cli
