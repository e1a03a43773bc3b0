#pragma once
// The words for shapes and fits in a job file.

#include <string_view>
#include <utility>
#include <vector>

#include "job/job.h"

namespace kerfpacket::job {

/// In the order in which messages list them.
const std::vector<std::pair<std::string_view, Shape>>& shape_words();
const std::vector<std::pair<std::string_view, Fit>>& fit_words();

/// "three-centred", as the job file has it.
std::string_view word(Shape shape);
std::string_view word(Fit fit);

}  // namespace kerfpacket::job
