#pragma once
// The full-size template of an arched opening: an assembly map, then a page for each tile that is printed.

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

/// `piece` is the first board of its opening; the template shows all of them.
void add_template(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
