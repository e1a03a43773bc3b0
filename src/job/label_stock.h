#pragma once
// [printer.labels]: the labels that a shop sticks on its blanks, on sheets or on a roll.

#include <tuple>

#include "job/diagnostics.h"
#include "job/media.h"

namespace kerfpacket::job {

using measure::Length;

/// Labels on an upright sheet, in columns and rows of equal steps; or on a roll, one below the other.
struct LabelStock {
    Media paper;
    int columns = 1;
    int rows = 1;
    Length width;   ///< of one label; of a roll the roll's
    Length height;  ///< of one label; 0 on a roll that is cut behind each label as long as it comes to
    Length across;  ///< from the left edge of a label to that of the next
    Length down;    ///< from the top edge of a label to that of the next
    Length left;    ///< from the left edge of the sheet to the first label
    Length top;     ///< from the top edge of the sheet to the first label
    Position at;    ///< of the table's header

    int on_sheet() const { return columns * rows; }
    /// Wherever they are told.
    bool same_as(const LabelStock& other) const {
        const auto figures = [](const LabelStock& of) {
            return std::tuple(of.columns, of.rows, of.width, of.height, of.across, of.down, of.left, of.top);
        };
        return paper == other.paper && figures(*this) == figures(other);
    }
};

}  // namespace kerfpacket::job
