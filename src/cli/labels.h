#pragma once
// Labels for what is cut of one job or several: on a shop's label sheets, or a roll.

#include <string>
#include <vector>

#include "cli/console.h"
#include "cli/inputs.h"

namespace kerfpacket::cli {

struct LabelsChoice {
    std::vector<std::filesystem::path> jobs;
    JobChoice job;    ///< of all of them, but for the file
    std::string out;  ///< empty: the job file's name with -labels.pdf, beside it; several jobs need a name
    int from = 1;     ///< the first free label of a half-used sheet
    bool force = false;
};

Status labels(const LabelsChoice& choice, Console& console, const std::filesystem::path& home);

}  // namespace kerfpacket::cli
