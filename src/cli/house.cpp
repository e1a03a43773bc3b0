#include "cli/house.h"

#include <algorithm>
#include <stdexcept>

#include <fmt/format.h>

#include "cli/target.h"
#include "cli/trouble.h"
#include "job/text.h"
#include "plan/make_stock_plan.h"

namespace kerfpacket::cli {
namespace {

bool has_stock(const Planned& job) { return !plan::no_stock(job.plan.stock); }

const Planned* with_stock(const std::vector<Planned>& jobs) {
    return with_table(jobs, "[stock]", has_stock,
                      [](const Planned& a, const Planned& b) { return plan::same_stock(a.plan.stock, b.plan.stock); });
}

void require_same_units(const std::vector<Planned>& jobs) {
    const Planned& first = jobs.front();
    for (const Planned& job : jobs)
        if (job.plan.header.units != first.plan.header.units)
            throw std::runtime_error(fmt::format("{} is in other units than {}; give them the same, or plan them apart",
                                                 job.inputs.job.name, first.inputs.job.name));
}

/// Two jobs of one number would have blanks of one name.
void require_own_numbers(const std::vector<Planned>& jobs) {
    for (std::size_t i = 0; i < jobs.size(); ++i)
        for (std::size_t j = 0; j < i; ++j)
            if (jobs[i].plan.header.number == jobs[j].plan.header.number)
                throw std::runtime_error(fmt::format(
                    "{} and {} are both job {}; planned together, each needs its own number", jobs[j].inputs.job.name,
                    jobs[i].inputs.job.name, job::in_quotes(jobs[i].plan.header.number)));
}

}  // namespace

std::vector<const plan::Plan*> PlannedHouse::plans() const {
    std::vector<const plan::Plan*> all;
    for (const Planned& job : jobs) all.push_back(&job.plan);
    return all;
}

plan::House PlannedHouse::house() const {
    return together ? plan::House(plans(), &*together) : plan::House(first().plan);
}

Status PlannedHouse::status() const {
    const bool cautions =
        (together && !together->refused.empty()) ||
        std::any_of(jobs.begin(), jobs.end(), [](const Planned& job) { return job.status == Status::cautions; });
    return cautions ? Status::cautions : Status::done;
}

std::optional<PlannedHouse> planned_house(const std::vector<std::filesystem::path>& files, const JobChoice& how,
                                          Console& console) {
    PlannedHouse house;
    bool all = true;
    for (const std::filesystem::path& file : files) {
        JobChoice one = how;
        one.file = file;
        if (std::optional<Planned> job = planned(one, console)) house.jobs.push_back(std::move(*job));
        else all = false;
    }
    if (!all) return std::nullopt;
    require_same_units(house.jobs);
    with_stock(house.jobs);
    require_own_numbers(house.jobs);
    if (house.jobs.size() == 1) return house;
    console.doing("planning the stock");
    house.together = plan::make_stock_plan(house.plans());
    console.doing("");
    tell_no_room(*house.together, house.jobs, console);
    return house;
}

const Planned* with_table(const std::vector<Planned>& jobs, const std::string& table,
                          const std::function<bool(const Planned&)>& has,
                          const std::function<bool(const Planned&, const Planned&)>& same) {
    const Planned* first = nullptr;
    for (const Planned& job : jobs) {
        if (!has(job)) continue;
        if (first != nullptr && !same(*first, job))
            throw std::runtime_error(
                fmt::format("the {} of {} is not that of {}; keep it in one shop file, or in one of the jobs", table,
                            job.inputs.job.name, first->inputs.job.name));
        if (first == nullptr) first = &job;
    }
    return first;
}

void tell_no_room(const plan::StockPlan& plan, const std::vector<Planned>& jobs, Console& console) {
    const auto source = std::find_if(jobs.begin(), jobs.end(), has_stock);
    console.message(job::render(plan.refused, (source == jobs.end() ? jobs.front() : *source).inputs.job));
}

void tell_unprintable(const fonts::MissingCharacter& missing, const fonts::Faces& faces,
                      const std::vector<Planned>& jobs, Console& console) {
    const Planned* from = &jobs.front();
    for (const Planned& job : jobs)
        if (unprintable(missing, faces, job.inputs.job).front().at.line > 0) from = &job;
    console.message(job::render(unprintable(missing, faces, from->inputs.job), from->inputs.job));
}

JobChoice filed_under(const std::vector<std::filesystem::path>& files, const JobChoice& how, const std::string& out) {
    if (files.size() > 1 && out.empty())
        throw std::runtime_error("what several jobs take together has no name of its own; give one with --out");
    JobChoice job = how;
    for (auto file = files.rbegin(); file != files.rend(); ++file) {
        job.file = *file;
        if (files.size() > 1) packet_target(out, job, "");
    }
    return job;
}

}  // namespace kerfpacket::cli
