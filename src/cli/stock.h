#pragma once
// What to buy for one job or several, and what to cut from each board; nothing is written.

#include <string>
#include <vector>

#include "cli/console.h"
#include "cli/inputs.h"

namespace kerfpacket::cli {

struct StockChoice {
    std::vector<std::string> jobs;
    std::string shop;  ///< empty: as every command finds it
    bool json = false;
    bool csv = false;
};

Status stock(const StockChoice& choice, Console& console, const std::filesystem::path& home);

}  // namespace kerfpacket::cli
