#pragma once
// Dash patterns, the same in every writer.

#include <vector>

#include "page/document.h"

namespace kerfpacket::output {

/// Lengths on and off in points, empty for a solid line; whole numbers.
std::vector<int> dash_pattern(page::Dash dash);

}  // namespace kerfpacket::output
