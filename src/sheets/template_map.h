#pragma once
// The page that shows how the tiles of a template lie, how to join them, and what to measure on the whole.

#include "sheets/template_tile.h"

namespace kerfpacket::sheets {

Draft template_map(const TemplateContext& context);

}  // namespace kerfpacket::sheets
