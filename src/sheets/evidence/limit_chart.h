#pragma once
// The least radius that is ok, against the spacing, for this board and blade at three depths, with the job on it.

#include "plan/piece.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

void draw_limit_chart(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape);

/// Whether that depth leaves so thin a web that no bend is ok: its name has a star.
bool leaves_thin_web(const plan::Piece& piece, const plan::LimitCurve& curve);

/// Where the chart's radius axis ends: the job and the curves lie on it unless one is far out of the other's range.
Length radius_axis_end(const plan::Piece& piece, Unit unit);

}  // namespace kerfpacket::sheets
