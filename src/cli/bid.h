#pragma once
// What a job takes, to reckon a bid by.

#include <string>

#include "cli/console.h"
#include "cli/inputs.h"

namespace kerfpacket::cli {

struct BidChoice {
    JobChoice job;
    std::string out;  ///< empty: the job file's name with -bid.pdf, beside it
    bool json = false;
    bool force = false;
};

/// Writes the sheet, or with `json` nothing, and reports.
Status bid(const BidChoice& choice, Console& console, const std::filesystem::path& home);

}  // namespace kerfpacket::cli
