#pragma once
// Why a piece cannot be made, and what would do, in the language of the sheets: the console says it in English.

#include <optional>
#include <string>

#include "sheets/layout/kit.h"

namespace kerfpacket::sheets {

/// What the plan says of a piece that it refuses, said by templates/<language>/refusals.toml: the sentence is found by
/// its English form, its figures are kept and written as the language writes them. None for a sentence that has no
/// form here.
std::optional<std::string> refusal_text(const std::string& english, const Kit& kit);

}  // namespace kerfpacket::sheets
