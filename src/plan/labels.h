#pragma once
// What gets a label: every blank, leg board, casing segment and rib of a house, and every offcut that is kept.

#include <string>
#include <vector>

#include "plan/house.h"

namespace kerfpacket::plan {

/// One label. Pointers are into the plans that it was made of.
struct Label {
    enum class Of { blank, left_leg, right_leg, segment, rib, offcut };

    Of of = Of::blank;
    const Plan* job = nullptr;               ///< of an offcut the first that was bought for
    int more_jobs = 0;                       ///< of an offcut, that were bought for with it
    int number = 1;                          ///< of the label in its job, from 1
    const Piece* piece = nullptr;            ///< none for an offcut
    const CasingSegment* segment = nullptr;  ///< of a segment
    std::size_t part = 0;                    ///< of a blank, which of its board's, from zero
    int copy = 1;                            ///< of several alike
    int copies = 1;
    int n = 1;                              ///< segment from the left, rib, or stick or sheet that the offcut is of
    int of_all = 1;                         ///< segments of one head, ribs of one form, or sticks or sheets of stock
    Length length;                          ///< as it is cut: of a segment the board that it needs, of a rib its chord
    Length width;                           ///< 0 where that is no matter
    const StockSection* section = nullptr;  ///< of an offcut of a board
    const SheetSection* sheets = nullptr;   ///< of one of a sheet
};

/// Job by job, piece by piece, board by board, each thing once; then the offcuts. What cannot be made has none.
std::vector<Label> labels_of(const House& house);

}  // namespace kerfpacket::plan
