#pragma once
// The pages that tell how to set a rib out with tape and batten: a drawing, a table of ordinates, trammels.

#include "sheets/templates/form_drawing.h"

namespace kerfpacket::sheets {

/// As many pages as the table of ordinates takes.
void add_form_table(Drafts& drafts, const TemplateContext& context, const plan::Piece& piece);

/// Whether the ribs of a head's first board, turned over, are those of its second: both sides are mirror images.
bool serves_both_boards(const plan::Piece& piece);

}  // namespace kerfpacket::sheets
