#pragma once
// What the strain sheet says about a piece.

#include <string>
#include <vector>

#include "plan/piece.h"
#include "sheets/layout/kit.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// "MDF": in our words, or as the user names a material of their own.
std::string material_name(const plan::Piece& piece, const Kit& kit);
/// "The strain in the web is what limits this piece."
std::string limit_sentence(bend::Limit limit, const Kit& kit);
/// "0.80": a strain in per cent.
std::string strain_percent(double strain, const Kit& kit);
/// "Kerfs 1 to 16 are in CAUTION ...", one sentence or more, each with its full stop.
std::vector<std::string> strain_reading(const plan::Piece& piece, const Kit& kit, const Tape& tape);

}  // namespace kerfpacket::sheets
