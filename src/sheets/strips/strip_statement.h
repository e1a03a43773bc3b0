#pragma once
// What stands under the header of a strip page, or at the end of a roll's: where the strips go and what a tick means.

#include <optional>
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

/// What to do with a coupon's strips, as it is said where they stand with those of boards.
std::string coupon_use(const plan::Plan& plan, const plan::Piece& coupon, const Kit& kit);
/// The type in which that finds room beside the last of them; nothing where it finds none.
std::optional<Type> coupon_use_type(const Pen& pen, const std::string& use, const Rect& room);
void draw_coupon_use(Pen& pen, const std::string& use, const Rect& room);

/// Title and subtitle of a strip page.
void name_strip_page(Draft& draft, const plan::Plan& plan, const plan::Piece& piece, const Kit& kit);

/// Counts the strip and its kerfs among what the page shows.
void count_strip(Draft& draft, const plan::Piece& piece, const Strip& strip);

}  // namespace kerfpacket::sheets
