#pragma once
// Sheets laid one after the other along a curve.

#include "sheets/templates/tiling.h"

namespace kerfpacket::sheets {

struct SheetsAlong {
    std::vector<Tile> tiles;
    std::vector<Joint> joints;
    CellSize cell;  ///< of a roll as long as the longest sheet needs
};

/// What the sheets follow and what they must show.
struct Band {
    const Path& guide;
    const std::vector<Path>& drawing;
    const Ticks& ticks;
    std::optional<Length> cross_reach{};  ///< of a joint's crosses from the guide; else as far as both cells reach
};

/// Each sheet takes as long a part of the band as its cell holds, turned to the chord of the guide there, on the first
/// of the cells that takes the fewest sheets; then all are laid again with cells as short as the same number of sheets
/// allows, so that the joints lie well inside. A joint is square to the guide and stands midway between two ticks.
SheetsAlong lay_along(const Band& band, const std::vector<CellSize>& cells);

}  // namespace kerfpacket::sheets
