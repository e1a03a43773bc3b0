#pragma once
// What a job or shop file says that no sheet of a packet hangs on: labels, and what a bid is reckoned by. It stands
// beside the job, so that a new box of labels or a new rate leaves every fingerprint as it is.

#include <optional>

#include "job/label_stock.h"
#include "job/rates.h"

namespace kerfpacket::job {

struct Beside {
    std::optional<LabelStock> labels;
    Rates rates;
};

}  // namespace kerfpacket::job
