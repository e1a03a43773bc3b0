#include "cli/outlines.h"

#include <fmt/format.h>

#include "cli/pieces_to_cut.h"
#include "cli/report.h"
#include "cli/street.h"
#include "output/exchange.h"
#include "plan/outlines.h"

namespace kerfpacket::cli {
Status outlines(const OutlinesChoice& choice, Console& console) {
    const std::optional<Planned> job = planned(choice.job, console);
    if (!job) return Status::errors;
    const auto pieces = pieces_to_cut(job->plan, choice.piece, console);
    if (pieces.empty()) return Status::errors;
    const std::string title =
        fmt::format("kerfpacket, job fingerprint {}: outlines without tool width", job->plan.fingerprint);
    console.result((choice.svg ? output::svg : output::dxf)(plan::outlines(pieces), title));
    console.message(verdict_line(job->plan));
    return job->status;
}

}  // namespace kerfpacket::cli
