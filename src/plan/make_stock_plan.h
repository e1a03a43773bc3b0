#pragma once
// From plans of jobs to the stock plan of all of them.

#include <vector>

#include "plan/plan.h"
#include "plan/stock_plan.h"

namespace kerfpacket::plan {

/// Whether a packet has use for a stock plan: it has several boards, or the job says what is sold of which section.
bool wants_stock_plan(const Plan& plan);

/// Packs the blanks of all jobs together, section by section. The units are those of the first job, the stock that of
/// the first that has any, the kerf the widest of all. There must be one job or more.
StockPlan make_stock_plan(const std::vector<const Plan*>& jobs);

/// Whether a job says nothing of its stock; whether two say the same.
bool no_stock(const job::Stock& stock);
bool same_stock(const job::Stock& a, const job::Stock& b);

}  // namespace kerfpacket::plan
