#pragma once
// Draws one face strip: foot, ticks, numerals, words, joints, at full size.

#include "plan/plan.h"
#include "sheets/pen.h"
#include "sheets/strip_layout.h"
#include "sheets/tape.h"

namespace kerfpacket::sheets {

/// What a strip needs to know of its surroundings.
struct StripContext {
    const plan::Plan& plan;
    const plan::Piece& piece;
    Tape tape{measure::Unit::inch};
    int strips = 0;  ///< of this piece
    Length lap;
};

/// Draws the strip with its starting end at `start` (lower corner, on the front edge of the board). It runs to the
/// right, or to the left when the piece is numbered from the right.
void draw_face_strip(Pen& pen, const StripContext& context, const Strip& strip, Point start);

}  // namespace kerfpacket::sheets
