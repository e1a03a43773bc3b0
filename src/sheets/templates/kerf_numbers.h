#pragma once
// Numbers beside the kerf ticks of a template.

#include "plan/lines.h"
#include "sheets/templates/template_drawing.h"

namespace kerfpacket::sheets {

/// Finds places for numbers: clear of all lines of the drawing, of each other and of every ring, and of the lines
/// between tiles if it can.
class NumberPlaces {
public:
    NumberPlaces(const std::vector<DrawnLine>& lines, const Tiling& tiling);

    /// The first of these places that is free, given as box centres; takes it.
    std::optional<Point> take(const Block& block, const std::vector<Point>& centres, Direction along);

private:
    Occupancy taken_;
    Occupancy between_tiles_;
};

/// Every fifth kerf of each board, outside the wall line, turned with its tick.
std::vector<Figure> number_kerfs(const Pen& pen, const std::vector<plan::KerfTick>& ticks, NumberPlaces free);

}  // namespace kerfpacket::sheets
