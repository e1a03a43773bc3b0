#pragma once
// The plan as a carpenter reads it.

#include "stock/problem.h"

namespace kerfpacket::stock {

/// Pieces exchanged between sticks while the offcuts get fewer and longer (the sum of their squares grows: whole
/// numbers, so it ends; not the best there is). Then the longest stick first, of equal ones that with the longest
/// pieces. Never costs more.
Plan tidied(const Problem& problem, Plan plan);

}  // namespace kerfpacket::stock
