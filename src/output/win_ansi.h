#pragma once
// Text in the one-byte code that most of a packet needs, half as long in the file as the full one.

#include <optional>
#include <string>
#include <string_view>

namespace kerfpacket::output {

/// UTF-8 text in WinAnsiEncoding (ISO 32000-1, annex D.2), or nothing when a character is not in it.
std::optional<std::string> win_ansi(std::string_view text);

}  // namespace kerfpacket::output
