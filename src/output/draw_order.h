#pragma once
// The order that makes a page short: things drawn with one pen together.

#include <vector>

#include "page/document.h"

namespace kerfpacket::output {

/// Artifacts, then figure by figure, lines and areas by pen; then text in the order to read it in. Black on black looks
/// the same in any order, so only black items change places, and none passes a white one.
std::vector<const page::Item*> draw_order(const page::Page& page);

}  // namespace kerfpacket::output
