#pragma once
// What changed from one plan to another, in words.

#include <string>
#include <vector>

#include "cli/street.h"

namespace kerfpacket::cli {

/// A sentence a change; none where both jobs come to the same.
std::vector<std::string> differences(const Planned& before, const Planned& now);

}  // namespace kerfpacket::cli
