#pragma once
// Casing segments on sheets, for people and for scripts.

#include <string>

#include "cli/json.h"
#include "plan/nest.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::cli {

/// Paragraphs for a person; empty where no casing comes from sheets.
std::string nest_report(const plan::CasingPlan& plan, const sheets::Kit& kit);
/// The sizes of segments, and what lies on each sheet: lengths in millimetres from its corner at the sawn edge.
Json nest_values(const plan::CasingPlan& plan);
/// A line for each segment, in the columns of `stock_csv`: the sheet is "C1", the cut its strip.
std::string nest_rows(const plan::CasingPlan& plan, const sheets::Kit& kit);

}  // namespace kerfpacket::cli
