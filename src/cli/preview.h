#pragma once
// One picture a page, or all pages on one.

#include <filesystem>

#include "cli/console.h"
#include "cli/inputs.h"

namespace kerfpacket::cli {

struct PreviewChoice {
    JobChoice job;
    std::filesystem::path out;  ///< folder; empty: the job file's name with "-pages", beside the job file
    bool svg = false;
    std::optional<double> dpi;   ///< of PNGs: 100 when not given, 36 for the pages of a contact sheet
    bool contact_sheet = false;  ///< all pages small on one picture, in the folder
    bool force = false;          ///< replace pictures that are there already
};

Status preview(const PreviewChoice& choice, Console& console, const std::filesystem::path& home);

}  // namespace kerfpacket::cli
