#pragma once
// The cut-count checklist of one piece: a row a kerf, in blocks of ten.

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

void add_checklist(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
