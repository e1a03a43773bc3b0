#pragma once
// A page of a roll has no header and no footer: what it is called stands at both of its ends, with a check bar on
// either axis.

#include "plan/plan.h"
#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

/// What a row with the check bar takes under the content.
inline constexpr Length roll_bar_row = Length::points(38);

/// Sets how long the two ends of the page are; edge, row and notes must be known.
void measure_roll_ends(Draft& draft, const plan::Plan& plan, const Kit& kit);

/// Draws both ends and the check bars.
void add_roll_furniture(Draft& draft, const plan::Plan& plan, const Kit& kit, std::size_t number, std::size_t count);

}  // namespace kerfpacket::sheets
