#pragma once
// How many boards of a hundred break, in words rounded to what is known.

#include <string>
#include <vector>

#include "plan/piece.h"
#include "sheets/layout/kit.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// "About 1 in 20 boards like this would break." A kerf too deep on which the verdict hangs is left aside, and said to
/// be.
std::string chance_sentence(const plan::Piece& piece, const Kit& kit);
/// "about 1 in 20" for any chance.
std::string chance_words(double breaks, const Kit& kit);
/// "A about 1 in 20", "A as it is, at kerf 12": within a sentence.
std::string chance_on_cover(const plan::Piece& piece, const Kit& kit);
/// "Counted: 3 trials, 1 coupon; lowest 0.63 %, mean 0.69 %.", or that nothing was.
std::string counted_sentence(const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
