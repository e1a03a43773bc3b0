#pragma once
// The sheet by which the labels of a shop are measured: each cell where labels will be printed, with a mark to measure.

#include "job/label_stock.h"
#include "measure/fraction.h"
#include "page/document.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::sheets {

/// From the left and from the top edge of a cell to its mark.
measure::Length label_check_mark(const job::LabelStock& labels, measure::Unit unit);

/// One page as large as the label sheet, which must be no roll. Only the first and the last cell are measured: between
/// them all steps are alike.
page::Document make_label_check(const job::LabelStock& labels, measure::Unit unit, const Kit& kit);

}  // namespace kerfpacket::sheets
