#pragma once
// One job, or several that are bought for together.

#include <vector>

#include "plan/plan.h"

namespace kerfpacket::plan {

struct House {
    std::vector<const Plan*> jobs;     ///< one or more, of the same units
    const StockPlan* stock = nullptr;  ///< of all of them together; none where none is wanted

    /// One job is a house too.
    House(const Plan& job)  // NOLINT(google-explicit-constructor): whoever has a plan has a house
        : jobs{&job}, stock(job.stock_plan ? &*job.stock_plan : nullptr) {}
    House(std::vector<const Plan*> all, const StockPlan* together) : jobs(std::move(all)), stock(together) {}

    const Plan& first() const { return *jobs.front(); }
    bool several() const { return jobs.size() > 1; }
};

}  // namespace kerfpacket::plan
