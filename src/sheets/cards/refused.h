#pragma once
// The sheet of a piece that cannot be made as the job asks for it, so that nobody looks for its strips.

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

/// What was asked, why it cannot be, what would do. The reasons are the program's messages, which are English.
void add_refused(Drafts& drafts, const plan::Plan& plan, const plan::Refused& refused, const Kit& kit);

/// "Arch liner", "Wall board".
std::string refused_name(const plan::Refused& refused, const Kit& kit);
/// "B, D": all that cannot be made.
std::string refused_ids(const plan::Plan& plan);

}  // namespace kerfpacket::sheets
