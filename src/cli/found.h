#pragma once
// What stands where a command writes, read once.

#include <filesystem>
#include <optional>
#include <string>

#include "cli/record.h"
#include "disk/read.h"

namespace kerfpacket::cli {

struct Found {
    std::filesystem::path file;
    disk::Seen seen;             ///< of nothing, where nothing stands
    std::string bytes;           ///< of a packet
    bool ours = false;           ///< this program wrote it
    std::string fault;           ///< why it is not as it was written: "was changed after ..."; empty where it is
    std::optional<Filed> filed;  ///< of a packet, or of a part of one, that is as it was written

    /// The record of a whole packet that is as it was written.
    const Filed* whole() const { return filed && filed->record.part.whole() ? &*filed : nullptr; }
};

/// Looks and reads. What is no packet of ours is told by `ours` and `fault`; whatever else keeps it from being read
/// (the disk, no permission, no process to be had, a later version) is thrown, so that nobody takes it for "not ours".
Found found_at(const std::filesystem::path& file);

/// Throws std::runtime_error where a new file may not take the place of what stands there: what is no file, and,
/// without `force`, one that is not ours, or on which somebody has worked.
void require_replaceable(const Found& there, bool force);

/// Throws std::runtime_error when a whole packet stands there: a part, or a sheet of no job, never takes its place.
void require_no_packet(const Found& there);

}  // namespace kerfpacket::cli
