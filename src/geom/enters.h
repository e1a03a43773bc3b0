#pragma once
// Whether a path comes into a rectangle, where nobody asks what of it lies there.

#include "geom/path.h"

namespace kerfpacket::geom {

/// Whether `clip` would find a part of the path inside.
bool enters(const Path& path, const Rect& window);

}  // namespace kerfpacket::geom
