#pragma once
// The set-up card of a splayed liner's flat blank: a round edge held square to the blade.

#include "plan/plan.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

Length blocks_plan_height(const plan::Piece& piece, const fonts::Style& style);
/// The blank at the fence from above, its wide edge against two like blocks, or against the spacer where its edge is
/// no circle; to scale.
void draw_blocks_plan(Pen& pen, const plan::Piece& piece, const Tape& tape, Length top);

/// Which kerfs bear on both blocks, and what is done about the others.
std::string bearing_text(const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
