#include "cli/check.h"

#include "cli/report.h"
#include "cli/resources.h"

namespace kerfpacket::cli {

Status check(const CheckChoice& choice, Console& console, const std::filesystem::path& home) {
    const std::optional<Planned> job = planned(choice.job, console);
    if (!job) return Status::errors;
    const Resources resources(home, job->plan.header.language);
    const std::optional<page::Document> packet = laid_out(*job, resources.kit(), {}, console);
    if (!packet) return Status::errors;
    console.result(choice.json ? report_json(job->plan, *packet, resources.kit())
                               : report(job->plan, *packet, resources.kit()));
    return job->status;
}

}  // namespace kerfpacket::cli
