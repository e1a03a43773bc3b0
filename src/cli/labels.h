#pragma once
// Labels for what is cut: on a shop's label sheets, or a roll.

#include <string>

#include "cli/console.h"
#include "cli/inputs.h"

namespace kerfpacket::cli {

struct LabelsChoice {
    JobChoice job;
    std::string out;  ///< empty: the job file's name with -labels.pdf, beside it
    int from = 1;     ///< the first free label of a half-used sheet
    bool force = false;
};

Status labels(const LabelsChoice& choice, Console& console, const std::filesystem::path& home);

}  // namespace kerfpacket::cli
