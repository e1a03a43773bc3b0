#pragma once
// Paths under one name, to be drawn together.

#include <string>
#include <vector>

#include "geom/path.h"

namespace kerfpacket::geom {

struct Layer {
    std::string name;
    std::vector<Path> paths;
};

/// The smallest rectangle that holds all paths; there must be one.
Rect bounds(const std::vector<Layer>& layers);

}  // namespace kerfpacket::geom
