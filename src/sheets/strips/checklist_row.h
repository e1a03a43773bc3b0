#pragma once
// Where the boxes and figures of a checklist's row stand.

#include <string>

#include "plan/piece.h"
#include "sheets/layout/kit.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// What was rounded away, true mark minus printed figure: thousandths of an inch or hundredths of a millimetre.
std::string residue_text(Length residue, const Tape& tape);

/// All counted from the row's left edge.
struct RowPlaces {
    Length numeral = Length::points(45);  ///< right edge
    Length mark = Length::points(105);    ///< right edge
    Length residue = Length::points(107);
    Length other;  ///< right edge
};

/// Left edge of the nth box, from 0, and of what stands behind the last.
Length box_at(std::size_t n, Length row);

/// The least width of a row with a box for each of so many boards.
Length least_row_width(const plan::Piece& piece, std::size_t boards, Length row, const Tape& tape, const Kit& kit);

RowPlaces row_places(const plan::Piece& piece, std::size_t boards, Length width, Length row, const Tape& tape,
                     const Kit& kit);

}  // namespace kerfpacket::sheets
