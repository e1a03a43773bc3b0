#pragma once
// What the assembly map of an arch template says: checks on the whole, arcs that a trammel strikes.

#include "sheets/templates/arch_drawing.h"
#include "sheets/templates/template_map.h"

namespace kerfpacket::sheets {

TemplateMap arch_map(const TemplateContext& context, const ArchOpening& arch, const TemplateWays& ways);

}  // namespace kerfpacket::sheets
