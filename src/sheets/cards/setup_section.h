#pragma once
// What the set-up card says of a moulded board: its section at full size, the web across it, who bears the bend.

#include "plan/plan.h"
#include "sheets/layout/figure_table.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

Length section_height(const plan::Piece& piece, const fonts::Style& style);
/// The end of the board at full size, flat back up, its bottom edge at the left as it lies at the fence. `top` is the
/// height it hangs from. Only of a board whose profile is told.
void draw_section(Pen& pen, const plan::Piece& piece, const Tape& tape, Length top);

/// Thickness and web at up to eight heights, with room to write what is measured.
FigureTable across_table(const plan::Piece& piece, const Kit& kit, const Tape& tape);

/// Whether the verdict hangs on the thinnest place and not on the thickest.
bool thinnest_governs(const plan::Piece& piece);
Length bears_height(const plan::Piece& piece, const fonts::Style& style);
/// Some grooves at the thickest and at the thinnest place, with what each bears.
void draw_bears(Pen& pen, const plan::Piece& piece, const Tape& tape, Length top);

}  // namespace kerfpacket::sheets
