#pragma once
// A bar that is measured to learn how a printer errs.

#include "measure/fraction.h"
#include "sheets/layout/pen.h"

namespace kerfpacket::sheets {

using measure::Unit;

/// One inch or 10 mm; a measured bar is a whole number of them long.
Length bar_step(Unit unit);

/// A bar from `zero`, its marks toward `inner`, numbered each inch or each 50 mm; its end tells the unit.
void draw_measured_bar(Pen& pen, Point zero, Direction along, Direction inner, Length length, Unit unit);

}  // namespace kerfpacket::sheets
