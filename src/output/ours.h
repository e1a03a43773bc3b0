#pragma once
// Whether a file is a packet of ours, that a new one may replace.

#include <filesystem>

namespace kerfpacket::output {

/// True when the file is a PDF whose producer is this program. Anything else, unreadable or broken, is not ours.
bool made_by_us(const std::filesystem::path& file);

}  // namespace kerfpacket::output
