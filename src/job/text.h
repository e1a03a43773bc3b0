#pragma once
// Text as the messages of this room need it.

#include <string>
#include <string_view>
#include <vector>

#include "text/characters.h"

namespace kerfpacket::job {

using text::byte_of_character;
using text::characters;
using text::code_point;
using text::first_bad_utf8;
using text::in_quotes;
using text::printable;
using text::split_lines;
using text::Tabs;

/// "a, b, c": the words in a row, each within `quote`.
std::string listed(const std::vector<std::string_view>& words, std::string_view quote = "");

}  // namespace kerfpacket::job
