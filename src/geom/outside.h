#pragma once
// What a line keeps when areas that it must not touch are taken out of it.

#include <functional>
#include <optional>
#include <vector>

#include "geom/path.h"

namespace kerfpacket::geom {

/// The parts of the straight line from `a` to `b` that lie outside of every area, from `a` on. A line along an area's
/// side stays whole.
std::vector<Path> outside(Point a, Point b, const std::vector<Rect>& areas);

/// The part of a straight line where something holds that changes at most once along it; none where it holds at neither
/// end.
std::optional<Path> part_where(Point a, Point b, const std::function<bool(Point)>& holds);

}  // namespace kerfpacket::geom
