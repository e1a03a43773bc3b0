#include "cli/several.h"

#include <algorithm>
#include <atomic>
#include <sstream>
#include <stdexcept>
#include <system_error>
#include <thread>

#include <fmt/format.h>

#include "disk/child.h"
#include "disk/leftovers.h"
#include "disk/process.h"
#include "disk/read.h"
#include "disk/side_by_side.h"
#include "job/text.h"

namespace kerfpacket::cli {
namespace {

namespace fs = std::filesystem;

/// What one job came to.
struct Told {
    Status status = Status::errors;
    std::string results, messages;
};

/// As long as a job may take, so much longer than any does that it only ends what never would; and what it may say.
constexpr unsigned most_seconds = 24 * 60 * 60;
constexpr std::size_t most_said = 64U << 20U;

void require_each_once(const std::vector<fs::path>& jobs) {
    std::vector<std::pair<fs::path, disk::Seen>> seen;
    for (const fs::path& job : jobs) {
        const disk::Seen now = job == "-" ? disk::Seen{} : disk::look(job);
        for (const auto& [earlier, then] : seen)
            if (job == earlier || now.same_as(then))
                throw std::runtime_error(fmt::format("{} is the same job as {}; name each once", job.string(),
                                                     job::in_quotes(earlier.string())));
        seen.emplace_back(job, now);
    }
}

/// In the child: the job as it would be done alone.
std::string answer(const fs::path& job, const OneJob& one, Manners manners) {
    // Ended with its parent or by the user, it leaves nothing half done, as alone.
    disk::tidy_up_with_parent();
    std::ostringstream results, messages;
    Console console(results, messages, false);
    // Colour is given where all is told.
    console.behave({manners.quiet, false});
    const Status status = console.flush(one(job, console));
    return disk::packed(std::to_string(static_cast<int>(status))) + disk::packed(results.str()) +
           disk::packed(messages.str());
}

Told told_by(const fs::path& job, const OneJob& one, Manners manners) try {
    const std::string all =
        disk::in_child([&] { return answer(job, one, manners); }, {disk::most_to_build, most_seconds, most_said},
                       job.string(), job.string() + ": its process ended before it was done");
    std::string_view rest = all;
    Told told;
    told.status = static_cast<Status>(std::stoi(disk::unpacked(rest)));
    told.results = disk::unpacked(rest);
    told.messages = disk::unpacked(rest);
    return told;
} catch (const std::exception& failure) {
    return {Status::errors, "", fmt::format("kerfpacket: {}\n", failure.what())};
}

const char* words(Status status) {
    switch (status) {
        case Status::done: return "done";
        case Status::cautions: return "done, with cautions";
        case Status::errors: break;
    }
    return "not done: errors";
}

/// Done, with cautions, with errors: in this order.
Status worse(Status a, Status b) {
    const auto rank = [](Status status) { return status == Status::done ? 0 : status == Status::cautions ? 1 : 2; };
    return rank(a) < rank(b) ? b : a;
}

}  // namespace

Status several(const std::vector<fs::path>& jobs, const OneJob& one, Console& console) {
    require_each_once(jobs);
    std::vector<Told> all(jobs.size());
    std::atomic<std::size_t> next{0}, finished{0};
    const auto work = [&] {
        for (std::size_t i = next++; i < jobs.size(); i = next++) {
            all[i] = told_by(jobs[i], one, console.manners());
            console.doing(fmt::format("{} of {} jobs done", ++finished, jobs.size()));
        }
    };
    console.doing(fmt::format("working on {} jobs", jobs.size()));
    {
        std::vector<std::jthread> others;
        try {
            for (std::size_t i = 1; i < std::min<std::size_t>(disk::cores_allowed(), jobs.size()); ++i)
                others.emplace_back(work);
        } catch (const std::system_error&) {
            // One after the other, then.
        }
        work();
    }
    console.doing("");
    Status worst = Status::done;
    for (const Told& told : all) {
        console.message(told.messages);
        console.result(told.results);
        worst = worse(worst, told.status);
    }
    for (std::size_t i = 0; i < jobs.size(); ++i)
        console.done(fmt::format("{}: {}\n", jobs[i].string(), words(all[i].status)));
    return worst;
}

}  // namespace kerfpacket::cli
