#pragma once
// A bent coupon with what is measured on it.

#include "bend/cell.h"
#include "sheets/layout/pen.h"

namespace kerfpacket::sheets {

/// Height that the drawing takes.
Length coupon_drawing_height(bend::KerfsOn side);
/// Chord and rise of the plain face, kerfs on their side of the bend; not to scale. `top` is the height under the
/// section's rule.
void draw_coupon(Pen& pen, bend::KerfsOn side, Length top);

inline constexpr Length one_kerf_drawing_height = Length::points(80);
/// A board clamped up to its only kerf, the rest raised until the kerf is closed: distance and rise. Not to scale.
void draw_one_kerf(Pen& pen, Length top);

}  // namespace kerfpacket::sheets
