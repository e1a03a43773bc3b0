#pragma once
// What a job takes, to reckon a bid by: counts that the plan knows, at the shop's rates or with blanks to fill in.

#include "page/document.h"
#include "plan/bid.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::sheets {

/// `sheets` of paper that the packet takes.
page::Document make_bid(const plan::Plan& plan, const job::Rates& rates, int sheets, const Kit& kit);

}  // namespace kerfpacket::sheets
