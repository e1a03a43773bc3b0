#pragma once
// The flat blank of a splayed liner where no sheet holds it: divided on straight lines of its soffit.

#include "plan/splice.h"

namespace kerfpacket::plan {

/// As few blanks, of lengths as even as kerfs allow, as the stock holds; their joints half way between two kerfs, so
/// that every kerf stays. `grain`: they run along it. Told is that even the shortest are too wide or too long for it.
tl::expected<Spliced, job::Diagnostics> divided(const Request& wanted, Laid laid, bool grain, const job::Job& job);

}  // namespace kerfpacket::plan
