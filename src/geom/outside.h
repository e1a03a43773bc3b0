#pragma once
// What a line keeps when areas that it must not touch are taken out of it.

#include <vector>

#include "geom/path.h"

namespace kerfpacket::geom {

/// The parts of the straight line from `a` to `b` that lie outside of every area, from `a` on. A line along an area's
/// side stays whole.
std::vector<Path> outside(Point a, Point b, const std::vector<Rect>& areas);

}  // namespace kerfpacket::geom
