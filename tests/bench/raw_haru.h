#pragma once
// The yardstick: a plain libharu program with whole faces that draws the same items.

#include <string>

#include "page/document.h"

namespace kerfpacket::bench {

/// Draws every path and text item with libharu and nothing else: faces as Debian ships them, pen, ink and font said
/// for each item, no check, no finish. What a page needs and no more: the cost our writer is held against.
std::string raw_haru(const page::Document& document);

}  // namespace kerfpacket::bench
