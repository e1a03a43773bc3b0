#include "cli/check.h"

#include <fmt/format.h>

#include "cli/report.h"
#include "cli/street.h"
#include "cli/trouble.h"

namespace kerfpacket::cli {

Status check(const CheckChoice& choice, Console& console, const std::filesystem::path& home) {
    const std::optional<Planned> job = planned(choice.job, console);
    if (!job) return Status::errors;
    const Resources resources(home, job->plan.header, job->inputs.words);
    const std::optional<page::Document> packet = laid_out(*job, resources.kit(), {}, console);
    if (!packet) return Status::errors;
    // The command line speaks English, whatever language the sheets are in.
    std::optional<fonts::Words> english;
    if (job->plan.header.language != "en" || !job->inputs.words.empty()) english.emplace(home / "templates", "en");
    const sheets::Kit packet_kit = resources.kit();
    const sheets::Kit kit{packet_kit.faces, english ? *english : packet_kit.words, packet_kit.style};
    console.result(choice.json ? report_json(job->plan, *packet, kit) : report(job->plan, *packet, kit));
    if (!choice.json && !choice.job.from_input())
        console.next(fmt::format("kerfpacket build {}", as_typed(choice.job.file.string())));
    return job->status;
}

}  // namespace kerfpacket::cli
