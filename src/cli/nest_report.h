#pragma once
// Casing segments and ribs of forms on sheets, for people and for scripts.

#include <string>

#include "cli/json.h"
#include "plan/nest.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::cli {

/// Paragraphs for a person; empty where nothing of that kind comes from sheets.
std::string nest_report(const plan::NestPlan& plan, const sheets::Kit& kit);
/// The sizes, and what lies on each sheet: lengths in millimetres from its corner at the sawn edge.
Json nest_values(const plan::NestPlan& plan);
/// A line for each, in the columns of `stock_csv`: the sheet is "C1", of ribs "F1", the cut its strip.
std::string nest_rows(const plan::NestPlan& plan, const sheets::Kit& kit);

}  // namespace kerfpacket::cli
