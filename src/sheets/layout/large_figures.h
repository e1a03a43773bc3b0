#pragma once
// Four figures side by side, so large that they are read at arm's length.

#include <array>
#include <string>
#include <utility>

#include "sheets/layout/flow.h"

namespace kerfpacket::sheets {

/// What each is, and the figure.
using LargeFigures = std::array<std::pair<std::string, std::string>, 4>;
void pour(Flow& flow, const LargeFigures& figures);

}  // namespace kerfpacket::sheets
