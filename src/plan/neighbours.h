#pragma once
// What the settings beside those that were taken would come to.

#include "plan/settle.h"

namespace kerfpacket::plan {

/// The settings with the next depths, the closest kerfs and the nearest ply across the board, and with the radius from
/// which one is ok where none is: each a run of the job with that written into it.
Settings with_neighbours(const Settled& settled, const Request& wanted, const Wood& wood, const job::Job& job);

}  // namespace kerfpacket::plan
