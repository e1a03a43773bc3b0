#pragma once
// The square code on every sheet (ISO/IEC 18004): whoever finds a sheet can see to which packet it belongs.

#include <string>

#include "page/document.h"
#include "plan/plan.h"

namespace kerfpacket::sheets {

using geom::Point;
using measure::Length;

/// Side of the code, without the white around it. It has 25 cells in a row, 29 for a long job number in Latin letters,
/// more where much has to be escaped: a 150 dpi scan that lies a little askew needs some 3 dots to a cell.
inline constexpr Length sheet_code_side = Length::inches(0.6);
/// Kept free beside the code: over four cells.
inline constexpr Length sheet_code_gap = Length::points(8);

/// What a code says: job number, revision, page with its kind of sheet, fingerprint, for example
/// "M-417/A/7 STRIPS/4BD145B3". What is not a letter, digit, space, point or hyphen of a number or a revision is
/// written as in RFC 3986, "%2F" for "/".
std::string sheet_code_words(const plan::Plan& plan, std::size_t number, const std::string& sheet);

/// Puts the page's code on it, its lower left corner at the point.
void draw_sheet_code(page::Page& page, const plan::Plan& plan, std::size_t number, Point low_left);

}  // namespace kerfpacket::sheets
