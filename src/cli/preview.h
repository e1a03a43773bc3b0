#pragma once
// One picture a page.

#include <filesystem>

#include "cli/build.h"

namespace kerfpacket::cli {

struct PreviewChoice {
    JobChoice job;
    std::filesystem::path out;  ///< folder; empty: the job file's name with "-pages", beside the job file
    bool svg = false;
    double dpi = 100;
    bool force = false;  ///< replace pictures that are there already
};

Status preview(const PreviewChoice& choice, Console& console, const std::filesystem::path& home);

}  // namespace kerfpacket::cli
