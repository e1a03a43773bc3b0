#pragma once
// The safety card: the usual cautions, every one deferring to the saw maker's manual.

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

void add_safety_card(Drafts& drafts, const plan::Plan& plan, const Kit& kit);

}  // namespace kerfpacket::sheets
