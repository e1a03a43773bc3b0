#pragma once
// Text for a terminal.

#include <string>
#include <string_view>

namespace kerfpacket::cli {

/// The text with its lines broken between words, so that a terminal of 80 columns breaks none itself.
std::string wrapped(std::string_view text);

}  // namespace kerfpacket::cli
