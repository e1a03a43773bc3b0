#pragma once
// One command on several jobs.

#include <filesystem>
#include <functional>
#include <vector>

#include "cli/console.h"

namespace kerfpacket::cli {

/// What a command does with one job; it tells its own failures and throws nothing.
using OneJob = std::function<Status(const std::filesystem::path& job, Console& console)>;

/// Does it with each job, each in a process of its own, as many at a time as there are processors. What they tell comes
/// in the order of the jobs and as each alone tells it; then a line for each. The worst status. Throws
/// std::runtime_error for a job that is named twice: two would write to one place.
Status several(const std::vector<std::filesystem::path>& jobs, const OneJob& one, Console& console);

}  // namespace kerfpacket::cli
