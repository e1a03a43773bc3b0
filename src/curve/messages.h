#pragma once
// How this room tells what measurements cannot be: lengths in the job's unit, limits that can be typed in as they
// stand.

#include <string>

#include <tl/expected.hpp>

#include "geom/point.h"
#include "job/diagnostics.h"
#include "measure/fraction.h"

namespace kerfpacket::curve {

/// The nearest length above a limit, below it, or up to it, that a job file would write: thousandths of an inch,
/// hundredths of a millimetre. Rounding the limit itself could name a length that is refused again.
std::string shown_above(geom::Length limit, measure::Unit units);
std::string shown_below(geom::Length limit, measure::Unit units);
std::string shown_at_most(geom::Length limit, measure::Unit units);

/// One error.
tl::unexpected<job::Diagnostics> refused(job::Position at, std::string message, std::string hint);

}  // namespace kerfpacket::curve
