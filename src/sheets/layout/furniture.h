#pragma once
// What stands on every sheet: header, footer, check bars.

#include "plan/plan.h"
#include "sheets/layout/draft.h"
#include "sheets/layout/pen.h"
#include "sheets/layout/sheet_code.h"

namespace kerfpacket::sheets {

/// Live area from the left and right edges.
inline constexpr Length side_margin = Length::points(36);
/// Left end of the sheet's code in the header.
inline Length sheet_code_left(Length page_width) { return page_width - side_margin - sheet_code_side; }
/// Its lower left corner.
inline Point sheet_code_place(Length page_width, Length page_height) {
    return {sheet_code_left(page_width), page_height - 18.24_pt - sheet_code_side};
}
/// Height of the horizontal check bar's line; below it only the footer.
inline constexpr Length check_bar_height = Length::points(51);
/// Statement line under the header's rule, from the top.
inline constexpr Length statement_line = Length::points(77);

/// Draws header and footer, and check bars on pages to scale; on a page of a roll what stands there in their place. A
/// page that is printed again is stamped with its number and the revision.
void add_furniture(Draft& draft, const plan::Plan& plan, const Kit& kit, std::size_t number, std::size_t count);

/// How wide the black square with the piece's name is.
Length tag_width(const Pen& pen, const std::string& tag);
/// The title of a sheet, with the board that it is for: "Mark strips, board 1 of 3".
std::string title_words(const Draft& draft, const Kit& kit);

/// What every sheet of a board says that is not to be cut as it stands, or that is scrap; nothing for others. A sheet
/// of a whole opening says it for any of its boards.
std::string forbidding(const Draft& draft, const plan::Plan& plan, const Kit& kit);

/// The name of the measured printer that this is printed on, or a word for none.
std::string profile_name(const plan::Plan& plan, Use use, const Kit& kit);

/// One check bar along `along` from `zero`: inches on its left side, millimetres on its right side. Without its words a
/// bar may be short, and one of its two lengths 0.
struct CheckBar;
void draw_check_bar(Pen& pen, Point zero, Direction along, CheckBar bar, bool words = true);

/// What is printed of paper and printer.
std::string print_words(const plan::Plan& plan, Use use, const Kit& kit);

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
/// The same for a roll, which may be narrow: down to 1 in and 20 mm, 0 where not even that fits.
CheckBar short_check_bar_for(Length space);

}  // namespace kerfpacket::sheets
