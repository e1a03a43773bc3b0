#include "cli/bid.h"

#include <algorithm>

#include <fmt/format.h>

#include "cli/json.h"
#include "cli/report.h"
#include "cli/resources.h"
#include "cli/sheet_target.h"
#include "cli/street.h"
#include "output/pdf.h"
#include "sheets/bid/bid_sheet.h"

namespace kerfpacket::cli {
namespace {

Json or_null(const std::optional<double>& value) { return value ? Json(*value) : Json(); }

/// JSON of schema 1: lengths in millimetres, areas in square millimetres, prices as they are given; null where a rate
/// is missing.
std::string json_of(const Planned& job, int sheets) {
    const plan::BidCounts counts = plan::bid_counts(job.plan);
    const job::Rates& rates = job.beside.rates;
    const plan::BidSums sums = plan::bid_sums(counts, job.plan, rates, sheets);
    Json work = Json::array();
    for (const plan::Work& one : counts.work)
        work.push_back({{"rate", std::string(job::rate_keys.at(static_cast<std::size_t>(one.rate)))},
                        {"count", one.count},
                        {"minutes_each", or_null(rates.of(one.rate))}});
    const Json all{{"schema", 1},
                   {"work", work},
                   {"blanks", counts.blanks},
                   {"kerf_stroke_mm", mm(counts.kerf_stroke)},
                   {"ripped_mm", mm(counts.ripped)},
                   {"curved_sawing_mm", mm(counts.curved_sawing)},
                   {"glue_area_mm2", counts.glue_area_mm2},
                   {"sheets_of_paper", sheets},
                   {"blanks_without_stock", counts.unplanned},
                   {"minutes", or_null(sums.minutes)},
                   {"labour", or_null(sums.labour)},
                   {"stock", or_null(sums.stock)},
                   {"paper", or_null(sums.paper)},
                   {"glue", or_null(sums.glue)},
                   {"blade", or_null(sums.blade)},
                   {"sum", or_null(sums.all())}};
    return all.dump(2) + "\n";
}

}  // namespace

Status bid(const BidChoice& choice, Console& console, const std::filesystem::path& home) {
    const std::optional<Planned> job = planned(choice.job, console);
    if (!job) return Status::errors;
    const Resources resources(home, job->plan.header, job->inputs.words);
    const std::optional<page::Document> packet = laid_out(*job, resources.kit(), {}, console);
    if (!packet) return Status::errors;
    console.doing("");
    const int sheets = static_cast<int>(packet->pages.size());
    if (choice.json) {
        console.result(json_of(*job, sheets));
        return job->status;
    }
    const SheetTarget target(choice.out, choice.force, choice.job, "-bid.pdf");
    const page::Document document = sheets::make_bid(job->plan, job->beside.rates, sheets, resources.kit());
    target.write(output::pdf(document, resources.faces()), console);
    const auto& given = job->beside.rates.given;
    const auto count = std::count_if(given.begin(), given.end(), [](const auto& rate) { return rate.has_value(); });
    console.done(fmt::format("{}: {} of {} rates are given, the others are blanks\n", target.file().string(), count,
                             job::rate_count));
    console.message(verdict_line(job->plan));
    return job->status;
}

}  // namespace kerfpacket::cli
