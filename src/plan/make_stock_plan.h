#pragma once
// From plans of jobs to the stock plan of all of them.

#include <cstdint>
#include <optional>
#include <vector>

#include "plan/plan.h"
#include "plan/stock_plan.h"
#include "stock/pack.h"

namespace kerfpacket::plan {

/// Whether a packet has use for a stock plan: it has several boards, or the job says what is sold of which section.
bool wants_stock_plan(const Plan& plan);

/// Packs the blanks of all jobs together, section by section. The units are those of the first job, the stock that of
/// the first that has any, the kerf the widest of all. There must be one job or more.
StockPlan make_stock_plan(const std::vector<const Plan*>& jobs);

/// The section of a spliced board of that job, packed as if the board's blanks had these lengths; as they are, where
/// none are given. `effort`: as of stock::pack; none: they are packed as they come.
StockSection section_with(const Plan& job, const std::string& id, const std::vector<Length>& lengths,
                          std::optional<std::int64_t> effort = stock::usual_effort);

/// Whether a job says nothing of its stock; whether two say the same.
bool no_stock(const job::Stock& stock);
bool same_stock(const job::Stock& a, const job::Stock& b);

}  // namespace kerfpacket::plan
