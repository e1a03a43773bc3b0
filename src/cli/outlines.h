#pragma once
// Lines of the job's parts for a router, a laser or a plotter; nothing is written.

#include "cli/console.h"
#include "cli/inputs.h"

namespace kerfpacket::cli {

struct OutlinesChoice {
    JobChoice job;
    bool svg = false;     ///< else DXF
    std::string piece{};  ///< empty: all
};

/// True size, pieces below each other, each layer named by its piece and what it is.
Status outlines(const OutlinesChoice& choice, Console& console);

}  // namespace kerfpacket::cli
