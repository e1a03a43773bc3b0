#pragma once
// Ribs of a bending form: how to set one out, then one at full size.

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

/// Nothing where the job asks for no form.
void add_form(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
