#pragma once
// What stands under the header of a strip page, or at the end of a roll's: where the strips go and what a tick means.

#include <string>
#include <vector>

#include "sheets/layout/draft.h"
#include "sheets/layout/pen.h"
#include "sheets/strips/strip_layout.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// "Stick on the KERF FACE", "Kerfs OUTSIDE the bend: they OPEN", "Tick = blade CENTER": one sentence each.
std::vector<std::string> strip_statements(const plan::Plan& plan, const plan::Piece& piece, const Kit& kit,
                                          Use use = Use::strips);

/// The same on the statement line, with a drawn tick that shows what the blade covers; on two lines where one is too
/// short.
void draw_statement(Pen& pen, const plan::Plan& plan, const plan::Piece& piece, Use use = Use::strips);
/// How much further down than two lines it reaches on a page that wide.
Length statement_overflow(Length page_width, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit, Use use);

/// Title and subtitle of a strip page.
void name_strip_page(Draft& draft, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit);

/// Counts the strip and its kerfs among what the page shows.
void count_strip(Draft& draft, const plan::Piece& piece, const Strip& strip);

}  // namespace kerfpacket::sheets
