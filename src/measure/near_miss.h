#pragma once
// The word that a mistyped one was meant to be.

#include <string>
#include <string_view>
#include <vector>

namespace kerfpacket::measure {

/// The known word nearest to a mistyped one, or empty when none is near (edit distance over a third of its length).
std::string near_miss(std::string_view word, const std::vector<std::string_view>& known);

}  // namespace kerfpacket::measure
