#pragma once
// A sheet with its strips and blanks, to scale.

#include "plan/stock_plan.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// How high the drawing becomes in a room so wide: never higher than `most`.
Length sheet_height(const plan::CutSheet& sheet, Length width, Length most);

/// Draws the sheet from the upper left corner of the room, its sawn edge up: trims hatched, strips with their blanks
/// and the names of these where they have room, offcuts hatched.
void draw_sheet(Pen& pen, const Rect& room, const plan::StockPlan& plan, const plan::CutSheet& sheet, int n,
                const Tape& tape);

}  // namespace kerfpacket::sheets
