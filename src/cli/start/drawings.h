#pragma once
// Small drawings in characters, the same in every language.

#include <array>
#include <string_view>

namespace kerfpacket::cli {

/// Two rows of one width for a choice of a question; empty where it has none.
std::array<std::string_view, 2> drawing(std::string_view question, std::string_view choice);

}  // namespace kerfpacket::cli
