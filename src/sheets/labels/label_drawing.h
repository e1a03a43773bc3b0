#pragma once
// One label: its words, its code, and where there is room a tiny board.

#include "sheets/labels/label_layout.h"

namespace kerfpacket::sheets {

/// Room of a label on its page, and what is set in it.
struct LabelPlace {
    Rect room;
    const plan::Label& label;
    const LabelText& text;
    const PlacedLabel& placed;
};

void draw_label(page::Page& page, const LabelPlace& place, const Kit& kit);

}  // namespace kerfpacket::sheets
