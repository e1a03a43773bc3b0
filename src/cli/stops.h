#pragma once
// Where the kerfs are cut, as a table for a digital stop or a spreadsheet; nothing is written.

#include "cli/console.h"
#include "cli/inputs.h"

namespace kerfpacket::cli {

/// The side of the kerf whose distance from zero is told.
enum class BladeSide { as_ticks, middle, near, far };

struct StopsChoice {
    JobChoice job;
    std::string blade = "as-ticks";  ///< a word of `blade_sides`
    std::string piece{};             ///< empty: all
};

/// The words of the command line for it: "as-ticks" (where the strip's ticks stand), "middle", and the side of the kerf
/// that is "near" zero or "far" from it.
const std::vector<std::string>& blade_sides();

/// Comma-separated values (as RFC 4180, with plain line ends), a row a kerf in the order of cutting, with a row of
/// names ahead. A board that is not to be cut gives no rows: it is told, and the status says so.
Status stops(const StopsChoice& choice, Console& console);

}  // namespace kerfpacket::cli
