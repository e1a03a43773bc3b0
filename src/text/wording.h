#pragma once
// What toml++ says of a text, as a carpenter would be told.

#include <string>
#include <string_view>

namespace kerfpacket::text {

/// A description of toml++ in plain words: none of its own are left, and of the text only names fit for a message.
std::string plain_words(std::string_view description);

/// True where a key or a table stands that was given before.
bool is_repeated(std::string_view description);

/// True for a mistake within the brackets of a list or of a table on one line.
bool is_bracketed(std::string_view description);

}  // namespace kerfpacket::text
