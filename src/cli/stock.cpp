#include "cli/stock.h"

#include <fmt/format.h>

#include <optional>

#include "cli/nest_report.h"
#include "cli/resources.h"
#include "cli/stock_json.h"
#include "cli/stock_report.h"
#include "cli/street.h"
#include "job/text.h"
#include "plan/make_stock_plan.h"

namespace kerfpacket::cli {
namespace {

/// What keeps jobs from being planned together; empty for nothing.
std::string apart(const std::vector<Planned>& jobs) {
    const Planned* with_stock = nullptr;
    for (const Planned& job : jobs) {
        const std::string name = job.inputs.job.name;
        if (job.plan.header.units != jobs.front().plan.header.units)
            return fmt::format("kerfpacket: {} is in other units than {}; give them the same, or plan them apart\n",
                               name, jobs.front().inputs.job.name);
        if (plan::no_stock(job.plan.stock)) continue;
        if (with_stock != nullptr && !plan::same_stock(with_stock->plan.stock, job.plan.stock))
            return fmt::format(
                "kerfpacket: the [stock] of {} is not that of {}; keep it in one shop file, or in one of the jobs\n",
                name, with_stock->inputs.job.name);
        if (with_stock == nullptr) with_stock = &job;
    }
    return {};
}

/// Two jobs of one number would have blanks of one name.
std::string doubled(const std::vector<Planned>& jobs) {
    for (std::size_t i = 0; i < jobs.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            if (jobs[i].plan.header.number == jobs[j].plan.header.number)
                return fmt::format(
                    "kerfpacket: {} and {} are both job {}; planned together, each needs its own number\n",
                    jobs[j].inputs.job.name, jobs[i].inputs.job.name, job::in_quotes(jobs[i].plan.header.number));
    return {};
}

std::vector<const plan::Plan*> plans_of(const std::vector<Planned>& jobs) {
    std::vector<const plan::Plan*> plans;
    plans.reserve(jobs.size());
    for (const Planned& job : jobs) plans.push_back(&job.plan);
    return plans;
}

plan::StockPlan planned_together(const std::vector<Planned>& jobs) {
    if (jobs.size() == 1 && jobs.front().plan.stock_plan) return *jobs.front().plan.stock_plan;
    return plan::make_stock_plan(plans_of(jobs));
}

std::string told(const StockChoice& choice, const plan::StockPlan& plan, const plan::CasingPlan& casing,
                 const sheets::Kit& kit) {
    if (choice.csv) return stock_csv(plan, kit) + nest_rows(casing, kit);
    if (!choice.json) return stock_report(plan, kit) + nest_report(casing, kit);
    Json values = stock_values(plan);
    values["casing"] = nest_values(casing);
    return values.dump(2) + "\n";
}

/// Tells what cannot be cut, at its place in the file of the stock.
void tell_refused(const plan::StockPlan& plan, const std::vector<Planned>& jobs, Console& console) {
    const Planned* source = &jobs.front();
    for (const Planned& job : jobs)
        if (plan::no_stock(source->plan.stock) && !plan::no_stock(job.plan.stock)) source = &job;
    console.message(job::render(plan.refused, source->inputs.job));
}

}  // namespace

Status stock(const StockChoice& choice, Console& console, const std::filesystem::path& home) {
    std::vector<Planned> jobs;
    for (const std::string& file : choice.jobs) {
        JobChoice one;
        one.file = file;
        one.shop = choice.shop;
        std::optional<Planned> job = planned(one, console);
        if (!job) return Status::errors;
        jobs.push_back(std::move(*job));
    }
    if (const std::string told = apart(jobs) + doubled(jobs); !told.empty()) {
        console.message(told);
        return Status::errors;
    }
    const plan::StockPlan plan = planned_together(jobs);
    tell_refused(plan, jobs, console);
    // The command line speaks English, whatever language the sheets are in.
    const Resources english(home, "en");
    const sheets::Kit kit = english.kit();
    console.result(told(choice, plan, plan::casing_plan(plans_of(jobs)), kit));
    return plan.refused.empty() ? Status::done : Status::cautions;
}

}  // namespace kerfpacket::cli
