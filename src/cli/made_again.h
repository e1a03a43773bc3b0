#pragma once
// A packet made again from what it carries, in a process with limits: it may come from anywhere, and a crafted job may
// ask for more than any house has.

#include <filesystem>
#include <string>
#include <vector>

#include "cli/record.h"
#include "cli/street.h"

namespace kerfpacket::cli {

/// What a packet comes to when it is made again.
struct Again {
    bool planned = false;  ///< its own job can be worked out
    bool made = false;     ///< and printed; only then:
    bool same = false;     ///< byte for byte the packet
    Statement statement;   ///< number, revision, fingerprint and pages, as they are now
    std::string sheets;    ///< where it was asked for: a digest of all that stands on them
    std::string said;      ///< why it could not be made
};

/// Throws disk::Failure where it cannot be told what the packet comes to: it takes more memory or time than is given to
/// it, or this kerfpacket's own files cannot be read. `packet` is its name.
Again made_again(const std::string& packet, const std::string& bytes, const Record& record,
                 const std::filesystem::path& home, bool digest_sheets);

/// `differences` from the job that a packet carries to that on the disk. Throws as `made_again`.
std::vector<std::string> differences(const std::string& packet, const Inputs& carried, const Planned& now,
                                     const std::filesystem::path& home);

}  // namespace kerfpacket::cli
