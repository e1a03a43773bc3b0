#pragma once
// UTF-8 to characters, strictly.

#include <optional>
#include <string_view>

namespace kerfpacket::fonts {

/// Takes the first character off `text`; nothing when the bytes there are not UTF-8 (RFC 3629: no overlong forms, no
/// surrogates, nothing above U+10FFFF). `text` must not be empty.
std::optional<char32_t> take_character(std::string_view& text);

}  // namespace kerfpacket::fonts
