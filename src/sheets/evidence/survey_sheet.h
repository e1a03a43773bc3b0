#pragma once
// The measured curve: three answers to the ordinates side by side, and how far every point misses each.

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

/// Nothing for a piece that was not measured by ordinates, and for all boards of an opening but the first.
void add_survey(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
