#pragma once
// What one job takes, or several together, to reckon a bid by.

#include <string>
#include <vector>

#include "cli/console.h"
#include "cli/inputs.h"

namespace kerfpacket::cli {

struct BidChoice {
    std::vector<std::filesystem::path> jobs;
    JobChoice job;    ///< of all of them, but for the file
    std::string out;  ///< empty: the job file's name with -bid.pdf, beside it; several jobs need a name
    bool json = false;
    bool force = false;
};

/// Writes the sheet, or with `json` nothing, and reports.
Status bid(const BidChoice& choice, Console& console, const std::filesystem::path& home);

}  // namespace kerfpacket::cli
