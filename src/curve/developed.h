#pragma once
// A curve laid flat: of the same length, turning less at every place.

#include "curve/curve.h"

namespace kerfpacket::curve {

/// The curve of the same length that turns `part` as much at every place; less than nothing turns the other way. It
/// starts where the curve does, in its direction. Exact where the curve is made of lines and arcs, elsewhere within
/// 1e-6 mm: its direction is exact, its points are summed by Simpson's rule in steps of 5 mm.
Curve developed(const Curve& curve, double part);

}  // namespace kerfpacket::curve
