#pragma once
// How this room tells what measurements cannot be: lengths in the job's unit, limits that can be typed in as they
// stand.

#include <tl/expected.hpp>

#include "geom/point.h"
#include "job/diagnostics.h"
#include "measure/fraction.h"

namespace kerfpacket::curve {

/// The nearest length above a limit, below it, or up to it, that a job file would write: thousandths of an inch,
/// hundredths of a millimetre. Rounding the limit itself could name a length that is refused again.
job::Told shown_above(geom::Length limit, measure::Unit units);
job::Told shown_below(geom::Length limit, measure::Unit units);
job::Told shown_at_most(geom::Length limit, measure::Unit units);

/// A shape of head by the name that job files have for it.
job::Told shape_word(std::string_view shape);
// That a rise does not fit such a head.
job::Told rise_more(const job::Told& rise, std::string_view shape);
job::Told rise_much(const job::Told& rise, std::string_view shape);
job::Told rise_less(const job::Told& rise, std::string_view shape);

/// One error.
tl::unexpected<job::Diagnostics> refused(job::Position at, job::Told message, job::Told hint);

}  // namespace kerfpacket::curve
