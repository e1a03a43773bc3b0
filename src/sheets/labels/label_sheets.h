#pragma once
// Labels on the sheets or the roll that a shop sticks them from.

#include <tl/expected.hpp>

#include "job/label_stock.h"
#include "page/document.h"
#include "sheets/labels/label_words.h"

namespace kerfpacket::sheets {

using measure::Length;

/// The least label that would do for all of a house, as wide as the stock's where that is wide enough; lengths as a
/// tape reads them, rounded up.
struct LabelsTooSmall {
    std::string tag;  ///< of the one that asks for most
    Length width;
    Length height;
};

/// The labels of a house, which must have some; the first `from` - 1 places of the first sheet stay empty. A roll has a
/// page for each label, to be cut behind it.
tl::expected<page::Document, LabelsTooSmall> make_labels(const plan::House& house, const job::LabelStock& stock,
                                                         int from, const Kit& kit);

}  // namespace kerfpacket::sheets
