#pragma once
// Whether two figures mean one size of board.

#include "measure/length.h"

namespace kerfpacket::job {

/// What a conversion between units leaves between two figures is none.
inline bool same_size(measure::Length a, measure::Length b) { return measure::abs(a - b) < measure::Length::mm(0.1); }

}  // namespace kerfpacket::job
