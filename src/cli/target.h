#pragma once
// Where a command writes, and what it must not write over.

#include <filesystem>
#include <string>

#include "cli/console.h"
#include "cli/inputs.h"
#include "disk/filing.h"

namespace kerfpacket::cli {

/// Throws std::runtime_error for a job that comes by the standard input.
void require_name(const JobChoice& job);

/// `out`, or the job file's name with `ending` for its own, beside the job file. Throws std::runtime_error for a name
/// that is never replaced, `force` or not: that of a file of figures or words (.toml), the job file or the shop file
/// themselves under whatever name; and where there is no name at all.
std::filesystem::path packet_target(const std::filesystem::path& out, const JobChoice& job, const char* ending);

/// Throws std::runtime_error when a picture may not be written there: something that is no file, the job file, or,
/// without `force`, any file at all.
void require_picture_target(const std::filesystem::path& target, const JobChoice& job, bool force);

/// Moves the files into place. What is in place without the disk's word for it is told, and is a caution.
void put(disk::Filing& filing, Console& console);

}  // namespace kerfpacket::cli
