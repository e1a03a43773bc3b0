#pragma once
// The order that makes a page short: things drawn with one pen together.

#include <vector>

#include "page/document.h"

namespace kerfpacket::output {

/// Lines and areas by pen, then text as it stood. Black on black looks the same in any order, so only black items
/// change places, and none passes a white one.
std::vector<const page::Item*> draw_order(const std::vector<page::Item>& items);

}  // namespace kerfpacket::output
