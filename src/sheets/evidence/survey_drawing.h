#pragma once
// Measured points on the curve that the job draws through them, the misses drawn larger than they are.

#include "plan/piece.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// As large as the space allows, from its top down; returns the height below which the page is free.
Length draw_survey(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape);

}  // namespace kerfpacket::sheets
