#pragma once
// A stock plan for people and for scripts.

#include <string>

#include "plan/stock_plan.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::cli {

/// Paragraphs for a person, in the units of the plan.
std::string stock_report(const plan::StockPlan& plan, const sheets::Kit& kit);
/// The same as JSON.
std::string stock_json(const plan::StockPlan& plan);
/// A line for each cut and each offcut, lengths in millimetres (RFC 4180, with plain line ends). No field begins with a
/// character that a table program takes for a formula.
std::string stock_csv(const plan::StockPlan& plan, const sheets::Kit& kit);

}  // namespace kerfpacket::cli
