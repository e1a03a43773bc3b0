#pragma once
// Text in the one-byte code that most of a packet needs, half as long in the file as the full one.

#include <optional>
#include <string>
#include <string_view>

namespace kerfpacket::output {

/// UTF-8 text in WinAnsiEncoding (ISO 32000-1, annex D.2), or nothing when a character is not in it.
std::optional<std::string> win_ansi(std::string_view text);

/// The character of a code from 20 (hexadecimal) on; 0 where there is none. A0 and AD are a space and a hyphen.
char32_t win_ansi_character(unsigned code);

}  // namespace kerfpacket::output
