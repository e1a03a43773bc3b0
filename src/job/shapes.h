#pragma once
// The words for shapes, fits, coupons, end cuts and sides of a wall in a job file.

#include <string_view>
#include <utility>
#include <vector>

#include "job/job.h"

namespace kerfpacket::job {

/// In the order in which messages list them.
const std::vector<std::pair<std::string_view, Shape>>& shape_words();
const std::vector<std::pair<std::string_view, Fit>>& fit_words();
const std::vector<std::pair<std::string_view, Held>>& held_words();
const std::vector<std::pair<std::string_view, Outcome>>& outcome_words();
const std::vector<std::pair<std::string_view, EndCut>>& end_cut_words();
const std::vector<std::pair<std::string_view, WallSide>>& wall_side_words();

/// On springs of different height: whether the whole arch tilts with the string from spring to spring (arcs of one
/// chord), or each half stands on its own spring and meets the other at the crown.
bool tilts(Shape shape);

/// "three-centred", as the job file has it.
std::string_view word(Shape shape);
std::string_view word(Fit fit);
std::string_view word(Held held);
std::string_view word(Outcome outcome);
std::string_view word(EndCut cut);
std::string_view word(WallSide side);

}  // namespace kerfpacket::job
