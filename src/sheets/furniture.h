#pragma once
// What stands on every sheet: header, footer, check bars.

#include "plan/plan.h"
#include "sheets/draft.h"
#include "sheets/pen.h"

namespace kerfpacket::sheets {

/// Live area from the left and right edges.
inline constexpr Length side_margin = Length::points(36);
/// Height of the horizontal check bar's line; below it only the footer.
inline constexpr Length check_bar_height = Length::points(51);
/// Statement line under the header's rule, from the top.
inline constexpr Length statement_line = Length::points(77);

/// Draws header and footer, and check bars on pages to scale.
void add_furniture(Draft& draft, const plan::Plan& plan, const Kit& kit, std::size_t number, std::size_t count);

/// The name of the measured printer that this is printed on, or a word for none.
std::string profile_name(const plan::Plan& plan, Use use, const Kit& kit);

/// Says over the header that the page was printed again: its number and the revision.
void add_reprint_stamp(Draft& draft, const plan::Plan& plan, const Kit& kit);

/// A heading with a rule under it from `left` to `right`; `aside` stands small at the right end.
void section(Pen& pen, Length left, Length right, Length baseline, const std::string& heading,
             const std::string& aside = {});

/// A square to tick, its lower left corner at the point.
void tick_box(Pen& pen, Point low_left, Length side);

/// Lengths of the check bars that fit into a space: the longest of 10, 8, 7, 6 in and of 250, 200, 180, 150 mm.
struct CheckBar {
    int inches = 0;
    int millimetres = 0;
};
CheckBar check_bar_for(Length space);

}  // namespace kerfpacket::sheets
