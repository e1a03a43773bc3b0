#pragma once
// Any bytes taken for texts, each ended by a zero byte.

#include <algorithm>
#include <string>
#include <string_view>

namespace kerfpacket {

/// Takes the next off the bytes.
inline std::string next_text(std::string_view& bytes) {
    const std::size_t end = std::min(bytes.find('\0'), bytes.size());
    std::string text(bytes.substr(0, end));
    bytes.remove_prefix(std::min(end + 1, bytes.size()));
    return text;
}

}  // namespace kerfpacket
