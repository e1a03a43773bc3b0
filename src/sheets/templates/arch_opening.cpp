#include "sheets/templates/arch_opening.h"

#include <algorithm>

#include "measure/require.h"
#include "sheets/templates/template_drawing.h"

namespace kerfpacket::sheets {

ArchOpening::ArchOpening(const plan::Plan& plan, const plan::Piece& first)
    : id(first.id), half(first.template_wish.half) {
    if (first.boards > 1) id.erase(id.rfind('/'));
    if (first.boards == 1) boards.push_back(&first);
    for (int board = 1; first.boards > 1 && board <= first.boards; ++board) {
        const std::string wanted = id + "/" + std::to_string(board);
        const auto found = std::find_if(plan.pieces.begin(), plan.pieces.end(),
                                        [&](const plan::Piece& piece) { return piece.id == wanted; });
        measure::require(found != plan.pieces.end(), "all boards of an opening are in the plan");
        boards.push_back(&*found);
    }
}

Length ArchOpening::spring_level() const {
    const auto springs = measured_springs(lines());
    return std::min(springs[0].y, springs[1].y);
}

Point ArchOpening::wall_crown() const {
    const Path& wall = lines().wall;
    return {{}, height_over(wall, {}).value_or(wall.bounds().high.y)};
}

const Path& ArchOpening::ordinate_line() const {
    return lines().casing_outside ? *lines().casing_outside : lines().wall;
}

}  // namespace kerfpacket::sheets
