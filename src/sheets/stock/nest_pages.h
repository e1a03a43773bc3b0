#pragma once
// Casing segments as nested stacks on their sheets, and ribs of forms on theirs, to scale.

#include <string>
#include <vector>

#include "plan/nest.h"
#include "sheets/layout/flow.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// What the sheets come to and how they are sawn, then each sheet drawn; nothing where nothing comes from one.
void add_nest_pages(Flow& flow, const plan::NestPlan& plan, const Tape& tape);

std::string nest_heading(const plan::NestPlan& plan, const Kit& kit);
/// How many sheets there are and how the stacks lie, a sentence or two each; what is not laid is told last.
std::vector<std::string> nest_lines(const plan::NestPlan& plan, const Kit& kit, const Tape& tape);
/// "A 3", or of several openings "A 3, 2 of 4".
std::string segment_name(const plan::NestPlan& plan, std::size_t size, int i, const Kit& kit);

}  // namespace kerfpacket::sheets
