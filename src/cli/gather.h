#pragma once
// What a packet is made from, read from the disk. Nothing after this looks at the disk again.

#include <optional>

#include "cli/console.h"
#include "cli/inputs.h"

namespace kerfpacket::cli {

/// The job file, the shop file that counts, the printer profiles and the shop's words that they name. A job or shop
/// file that cannot be read is told, with what is wrong in the other; then there is nothing. Throws std::runtime_error
/// when the shop's words cannot be read.
std::optional<Inputs> gathered(const JobChoice& choice, Console& console);

}  // namespace kerfpacket::cli
