#pragma once
// The words for shapes, fits and coupons in a job file.

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

/// "three-centred", as the job file has it.
std::string_view word(Shape shape);
std::string_view word(Fit fit);
std::string_view word(Held held);
std::string_view word(Outcome outcome);

}  // namespace kerfpacket::job
