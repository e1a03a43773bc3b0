#pragma once
// What a printer of narrow rolls is measured by: one bar along the feed. Strips run that way; a bar across a label
// would be read no better than to a percent or so, and where a strip lies across its roll moves no mark.

#include "job/media.h"
#include "measure/fraction.h"
#include "page/document.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::sheets {

/// Too narrow for full-size drawings, and so for the page with bars both ways.
bool is_narrow_roll(const job::Media& media);

/// 24 in or 600 mm.
measure::Length roll_check_bar(measure::Unit unit);

/// The strip with the bar, what to do beside it, turned as strips are printed.
page::Page roll_check(const job::Media& media, measure::Unit unit, const Kit& kit);

}  // namespace kerfpacket::sheets
