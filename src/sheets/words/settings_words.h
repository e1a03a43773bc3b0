#pragma once
// How depth and spacing of a piece came about, in sentences for the cover and the command line.

#include <string>
#include <vector>

#include "plan/piece.h"
#include "sheets/layout/kit.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// What was chosen, what limits it, and what the neighbouring choices would cost or save in cuts; empty where the job
/// gives both depth and spacing.
std::vector<std::string> settings_sentences(const plan::Piece& piece, const Kit& kit, const Tape& tape);

/// "coupon first", or whose coupon the verdict rests on.
std::string coupon_state(const plan::Piece& piece, const Kit& kit);
/// "Bend: ok, coupon first"; of a board that is not to be cut, that.
std::string bend_verdict(const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
