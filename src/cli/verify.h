#pragma once
// Whether a filed packet is what was once written, and still what its job would print.

#include <filesystem>

#include "cli/console.h"
#include "cli/inputs.h"

namespace kerfpacket::cli {

struct VerifyChoice {
    std::filesystem::path packet;
    JobChoice job;  ///< on the disk; without a file the packet is only compared with itself
};

/// Done: intact, and the same when it is made again. Errors: changed, no packet, or a job that cannot be read.
/// Cautions: intact, but of another version, so that it cannot be made again; or the job would print something else.
/// Writes nothing.
Status verify(const VerifyChoice& choice, Console& console, const std::filesystem::path& home);

}  // namespace kerfpacket::cli
