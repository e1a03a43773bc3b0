#pragma once
// Small help with UTF-8 text, and with showing text that may hold anything.

#include <cstddef>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace kerfpacket::text {

/// Byte offset of the first thing that is not UTF-8 (RFC 3629: no overlong forms, no surrogates), if there is one.
std::optional<std::size_t> first_bad_utf8(std::string_view text);

/// The code point of one character of UTF-8.
char32_t code_point(std::string_view character);

/// Number of characters (code points) in UTF-8 text.
std::size_t characters(std::string_view text);

/// Byte offset of the character with this index from 0; the text's size when it is shorter.
std::size_t byte_of_character(std::string_view text, std::size_t index);

enum class Tabs { replace, keep };

/// The text with "?" for each character that has no shape of its own: controls, line and paragraph separators, marks
/// that turn the direction of writing. On a terminal or a sheet they would move what stands around them.
std::string printable(std::string_view text, Tabs tabs = Tabs::replace);

/// The user's words within quotes, fit for a message: control characters as "?", long ones cut.
std::string in_quotes(std::string_view words);

/// The lines of a text without their line ends (LF or CR LF).
std::vector<std::string_view> split_lines(std::string_view text);

}  // namespace kerfpacket::text
