#pragma once
// What a text is refused for before it is parsed.

#include <optional>
#include <string>
#include <string_view>

#include "text/toml.h"

namespace kerfpacket::text {

/// Follows brackets and the dots of keys outside strings and comments. toml++ builds a nested table for every dot of a
/// dotted key and takes them down by recursion, so that a long enough key would end the program.
std::optional<Mistake> unreasonable(std::string_view text);

}  // namespace kerfpacket::text
