#pragma once
// Files written whole or not at all.

#include <filesystem>
#include <string>

namespace kerfpacket::output {

/// Writes to a temporary file beside the target, flushes it to the disk, then renames: a reader sees the old file or
/// the whole new one. Throws std::runtime_error in plain words (full disk, no permission) and leaves nothing behind.
void write_whole(const std::filesystem::path& target, const std::string& bytes);

}  // namespace kerfpacket::output
