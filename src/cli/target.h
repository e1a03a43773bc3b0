#pragma once
// Where a command writes, and what it must not write over.

#include <filesystem>

namespace kerfpacket::cli {

/// Where the packet goes: `out`, or the job file's name with `ending` for its own, beside the job file. Throws
/// std::runtime_error when something stands there that may not be replaced: anything but a file, the job file itself,
/// and, without `force`, a file that is not a packet of ours.
std::filesystem::path packet_target(const std::filesystem::path& out, const std::filesystem::path& job_file,
                                    const char* ending, bool force);

/// Throws std::runtime_error when a picture may not be written there: something that is no file, the job file, or,
/// without `force`, any file at all.
void require_picture_target(const std::filesystem::path& target, const std::filesystem::path& job_file, bool force);

}  // namespace kerfpacket::cli
