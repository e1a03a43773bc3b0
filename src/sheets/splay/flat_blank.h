#pragma once
// The sheets of a splayed liner's flat blank: what it is, how its sheets are joined, and it at full size.

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

/// Nothing of a board that has straight edges.
void add_flat_blank(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
