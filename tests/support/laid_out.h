#pragma once
// A job file's packet as the program lays it out, before it becomes a PDF.

#include <filesystem>
#include <optional>
#include <sstream>
#include <stdexcept>

#include "cli/street.h"

namespace kerfpacket::tests {

/// With `before`, the job file of the revision before, it has a change page. Throws with the program's messages when a
/// job cannot be planned or printed.
inline page::Document laid_out(const std::filesystem::path& job, const std::filesystem::path& before = {}) {
    std::ostringstream out, err;
    cli::Console console(out, err, false);
    const auto planned = [&](const std::filesystem::path& file) {
        auto found = cli::planned(cli::JobChoice{file}, console);
        if (!found) throw std::runtime_error(err.str());
        return *found;
    };
    const auto now = planned(job);
    std::optional<cli::Planned> old;
    if (!before.empty()) old = planned(before);
    const cli::Resources resources(KERFPACKET_BUILD_DIR, now.plan.header, now.inputs.words);
    auto packet = cli::laid_out(now, resources.kit(), {}, console, old ? &*old : nullptr);
    if (!packet) throw std::runtime_error(err.str());
    return *packet;
}

}  // namespace kerfpacket::tests
