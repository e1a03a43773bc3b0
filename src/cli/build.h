#pragma once
// A job's packet, written.

#include <filesystem>

#include "cli/console.h"
#include "cli/inputs.h"

namespace kerfpacket::cli {

struct BuildChoice {
    JobChoice job;
    PartChoice part;
    std::filesystem::path out;  ///< empty: the job file's name with ".pdf", "-part.pdf" for a part, beside the job file
    bool open = false;          ///< show it to the user when it is written
    bool force = false;         ///< replace a file that is not a packet of ours; print weak links
};

Status build(const BuildChoice& choice, Console& console, const std::filesystem::path& home);

}  // namespace kerfpacket::cli
