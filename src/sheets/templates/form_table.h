#pragma once
// The pages that tell how to set a rib out with tape and batten: a drawing, a table of ordinates, trammels.

#include "sheets/templates/form_drawing.h"

namespace kerfpacket::sheets {

/// As many pages as the table of ordinates takes.
void add_form_table(Drafts& drafts, const TemplateContext& context, const plan::Piece& piece);

}  // namespace kerfpacket::sheets
