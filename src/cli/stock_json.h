#pragma once
// A stock plan in the JSON of a report.

#include "cli/json.h"
#include "plan/stock_plan.h"

namespace kerfpacket::cli {

/// JSON of schema 1, lengths in millimetres, prices as they are given.
Json stock_values(const plan::StockPlan& plan);

}  // namespace kerfpacket::cli
