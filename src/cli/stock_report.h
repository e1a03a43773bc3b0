#pragma once
// A stock plan for people and for scripts.

#include <string>

#include "plan/stock_plan.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::cli {

/// Paragraphs for a person, in the units of the plan.
std::string stock_report(const plan::StockPlan& plan, const sheets::Kit& kit);
/// A line for what is not in the plan, for each cut and each offcut, lengths in millimetres (RFC 4180, with plain line
/// ends). No field begins with a character that a table program takes for a formula.
std::string stock_csv(const plan::StockPlan& plan, const sheets::Kit& kit);
/// A field in quotes where it needs them; a formula would begin with one of the characters that get a stroke before.
std::string csv_field(std::string text);
std::string csv_millimetres(measure::Length length);

}  // namespace kerfpacket::cli
