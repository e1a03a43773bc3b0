#pragma once
// The set-up card of a board that climbs: the saw turned to the kerfs' angle.

#include "plan/plan.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// Heights that the drawings take; `top` is what each hangs from.
Length askew_plan_height(const plan::Piece& piece, const fonts::Style& style);
/// The board at the fence from above, the kerfs at their true angle: waste, what is cut, the blade, which way the
/// handle swings.
void draw_askew_plan(Pen& pen, const plan::Plan& plan, const plan::Piece& piece, Length top);

Length along_cut_height(const plan::Piece& piece, const fonts::Style& style);
/// The board cut through along a kerf, half size: what the spacer is along the cut, and how long the cut is.
void draw_along_cut(Pen& pen, const plan::Piece& piece, const Tape& tape, Length top);

}  // namespace kerfpacket::sheets
