#pragma once
// A job file's packet as the program lays it out, before it becomes a PDF.

#include <filesystem>
#include <sstream>
#include <stdexcept>

#include "cli/street.h"

namespace kerfpacket::tests {

/// Throws with the program's messages when the job cannot be planned or printed.
inline page::Document laid_out(const std::filesystem::path& job) {
    std::ostringstream out, err;
    cli::Console console(out, err, false);
    const auto planned = cli::planned(cli::JobChoice{job}, console);
    if (!planned) throw std::runtime_error(err.str());
    const cli::Resources resources(KERFPACKET_BUILD_DIR, planned->plan.header, planned->inputs.words);
    auto packet = cli::laid_out(*planned, resources.kit(), {}, console);
    if (!packet) throw std::runtime_error(err.str());
    return *packet;
}

}  // namespace kerfpacket::tests
