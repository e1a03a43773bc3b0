#pragma once
// Why a piece cannot be made, and what would do, in the language of the sheets: the console says it in English.

#include <string>
#include <vector>

#include "job/told.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::sheets {

/// What the plan says of a piece that it refuses, said by templates/<language>/refusals.toml. Words that are missing
/// there are an error: nothing stays in the program's English.
std::string refusal_text(const job::Told& told, const Kit& kit);

/// The ways that would do, each by itself; none where the hint offers no choice.
std::vector<std::string> refusal_ways(const job::Told& hint, const Kit& kit);

}  // namespace kerfpacket::sheets
