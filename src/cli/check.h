#pragma once
// The job computed and reported; nothing is written.

#include "cli/console.h"
#include "cli/inputs.h"

namespace kerfpacket::cli {

struct CheckChoice {
    JobChoice job;
    bool json = false;
};

Status check(const CheckChoice& choice, Console& console, const std::filesystem::path& home);

}  // namespace kerfpacket::cli
