#pragma once
// A board of stock as a bar, to scale.

#include "plan/stock_plan.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// Draws the board from the left, `longest` as long as the room is wide: trim hatched, blanks with their names where
/// these have room, kerfs as heavy lines, the offcut hatched; what is said of that is `offcut`.
void draw_stick(Pen& pen, const Rect& room, const plan::StockPlan& plan, const plan::CutStick& stick, int n,
                Length longest, const Tape& tape, const std::string& offcut);

}  // namespace kerfpacket::sheets
