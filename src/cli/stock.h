#pragma once
// What to buy for one job or several, and what to cut from each board; nothing is written.

#include <string>
#include <vector>

#include "cli/console.h"
#include "cli/inputs.h"

namespace kerfpacket::cli {

struct StockChoice {
    std::vector<std::filesystem::path> jobs;
    JobChoice job;  ///< of all of them, but for the file
    bool json = false;
    bool csv = false;
};

Status stock(const StockChoice& choice, Console& console, const std::filesystem::path& home);

}  // namespace kerfpacket::cli
