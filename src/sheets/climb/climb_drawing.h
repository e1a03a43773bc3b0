#pragma once
// Drawings of a board that climbs, each as large as its space allows; not to scale for measuring.

#include "plan/piece.h"
#include "sheets/layout/pen.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// Every how many kerfs one is drawn, so that some twenty are.
int kerfs_apart(const plan::Piece& piece);

/// Unrolled, as it hangs: seen face toward the reader, kerfs upright, ends as they are cut.
void draw_hanging(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape);

/// As it lies at the saw: kerf face up, front edge nearest, what goes off its ends hatched. Wider than it is where it
/// is so long that nothing could be told of it.
void draw_at_saw(Pen& pen, const Rect& space, const plan::Piece& piece);

/// In space, from the room: what is hidden is left out.
void draw_in_space(Pen& pen, const Rect& space, const plan::Piece& piece);

}  // namespace kerfpacket::sheets
