#pragma once
// A coupon so far from the table that it is a question, not a figure.

#include <optional>

#include "bend/cell.h"
#include "job/diagnostics.h"
#include "job/job.h"
#include "plan/tried.h"

namespace kerfpacket::plan {

/// What was read, what it would mean, and the slips that give such figures; or none, where the coupon is no question.
/// One that only held or closed may be as weak as it likes. `cell` is the piece as it was cut.
std::optional<job::Diagnostics> absurd_coupon(const job::Coupon& given, const CouponResult& coupon,
                                              const bend::Cell& cell, double softness, measure::Unit unit);

}  // namespace kerfpacket::plan
