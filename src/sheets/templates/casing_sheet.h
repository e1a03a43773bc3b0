#pragma once
// Flat casing, each segment a full-size template of its own, its grain along the page.

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

/// `piece` is the first board of its opening; nothing where that has no casing.
void add_casing(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
