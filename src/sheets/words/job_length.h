#pragma once
// Lengths as a job file has them, in whatever language they are told.

#include <string>

#include "measure/fraction.h"

namespace kerfpacket::sheets {

/// "8-1/2 in", "75 mm": to be typed into the job file.
std::string job_length(measure::Length value, measure::Unit unit);

}  // namespace kerfpacket::sheets
