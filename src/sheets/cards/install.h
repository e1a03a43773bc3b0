#pragma once
// The install card: what to look at before the glue, the glue log, and the cautions of fastening.

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

void add_install_card(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
