#pragma once
// Asks for the measurements and writes a job file.

#include <filesystem>
#include <string>
#include <vector>

#include "cli/console.h"
#include "cli/start/lines.h"

namespace kerfpacket::cli {

struct StartChoice {
    std::string file;      ///< the job file to write; empty: job.toml, of an example its name
    std::string shop;      ///< empty: as every command finds it
    std::string language;  ///< of talk and job; empty: that of a talk that was broken off, else English
    /// Filled field sheets, whose answers are taken; what they do not say is asked. A last one that ends in .toml is
    /// `file`, where that is empty.
    std::vector<std::string> from{};
    std::string example;  ///< the name of a worked example to write; empty: ask
};

/// Throws std::runtime_error for a file that is there already, or has another ending than .toml. What is answered is
/// kept beside the file, in NAME.toml.part, from the first answer until the job file is written.
Status start(const StartChoice& choice, const NextLine& next, Console& console, const std::filesystem::path& home);

}  // namespace kerfpacket::cli
