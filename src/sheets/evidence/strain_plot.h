#pragma once
// Strain at each kerf as a part of the break strain, along the blank.

#include "plan/piece.h"
#include "sheets/layout/pen.h"
#include "sheets/words/kerf_list.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// The kerfs with the most strain, and those that come within what is printed of it.
std::vector<KerfRun> worst_kerfs(const plan::Piece& piece);
/// What the plot's axis ends with: 1.2, or up to 2.0 where the strain goes higher.
double strain_axis_end(const plan::Piece& piece);

void draw_strain_plot(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape);

}  // namespace kerfpacket::sheets
