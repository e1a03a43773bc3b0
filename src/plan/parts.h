#pragma once
// The blanks that joints make of a board.

#include <vector>

#include "plan/blank.h"

namespace kerfpacket::plan {

/// From zero on, each counted from its own end nearer to zero.
std::vector<Blank> parts_of(const Blank& whole, const std::vector<Joint>& joints);

}  // namespace kerfpacket::plan
