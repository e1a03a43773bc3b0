#pragma once
// How a blank's marks are cut into strips: where each begins and ends, its own tape mark, how it is numbered.

#include <cstddef>
#include <optional>
#include <vector>

#include "plan/piece.h"
#include "sheets/layout/kit.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// How numerals stand where ticks crowd; decided strip by strip.
enum class Numbering { one_row_large, one_row, two_rows, every_fifth, every_tenth };

struct Strip {
    int number = 0;    ///< from 1
    Length from = {};  ///< of the blank, from zero
    Length to = {};
    std::size_t first_kerf = 0;  ///< index into Blank::kerfs
    std::size_t end_kerf = 0;    ///< one past the last
    bool joined_before = false;  ///< the strip of the number before meets it
    bool joined_after = false;
    std::optional<Length> tape_mark = {};  ///< whole inch (or centimetre) that sets this strip; none from zero
    std::vector<Length> tape_checks = {};  ///< distances from zero inside this strip
    Numbering numbering = Numbering::one_row_large;

    bool has_kerfs() const { return first_kerf < end_kerf; }
};

/// Cuts the marks of a piece into strips of at most `longest`. Every mark is placed from zero; a joint stands in the
/// middle of a land, its name clear of tape checks where that can be. Long straight ends get no empty strips, but where
/// the cut of an end is too far from the marks it has a short strip of its own, without kerfs.
/// Over the edge numerals are never larger than 13 pt, and stand in two rows only where the web has room for them.
std::vector<Strip> cut_strips(const plan::Piece& piece, Length longest, const Tape& tape, const Kit& kit);

/// The rule of the layout for one strip: the widest numeral `at_17`, `at_13`, `at_13_bold` against the smallest gap.
/// Where every fifth would run into the next, every tenth: never smaller.
struct NumeralWidths {
    Length at_17;
    Length at_13;
    Length at_13_bold;
};
Numbering numbering_for(const NumeralWidths& widths, Length smallest_gap, Length kerf);

}  // namespace kerfpacket::sheets
