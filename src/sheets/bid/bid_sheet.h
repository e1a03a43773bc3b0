#pragma once
// What a job takes, or several together, to reckon a bid by: counts that the plan knows, at the shop's rates or with
// blanks to fill in.

#include "page/document.h"
#include "plan/bid.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::sheets {

/// `sheets` of paper that the packets take. Header, footer and code are those of the first job.
page::Document make_bid(const plan::House& house, const job::Rates& rates, int sheets, const Kit& kit);

}  // namespace kerfpacket::sheets
