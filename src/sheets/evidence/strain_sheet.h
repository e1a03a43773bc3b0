#pragma once
// The strain sheet of one piece: strain kerf by kerf, and how tight this board bends at other settings.

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

void add_strain_sheet(Drafts& drafts, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit);

}  // namespace kerfpacket::sheets
