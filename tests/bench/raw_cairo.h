#pragma once
// The other yardstick: a plain Cairo program with whole faces that draws the same items.

#include <string>

#include "page/document.h"

namespace kerfpacket::bench {

/// Draws every path and text item into a PDF with Cairo and nothing else, as raw_haru does with libharu.
std::string raw_cairo(const page::Document& document);

}  // namespace kerfpacket::bench
