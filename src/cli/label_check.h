#pragma once
// A shop's label sheets measured: the sheet to print, and what was measured on it made the figures of [printer.labels].

#include "cli/printer_check.h"
#include "job/label_stock.h"

namespace kerfpacket::cli {

/// Of the labels that `choice` names: the sheet is written where nothing was measured, else the figures are told.
Status label_check(const PrinterCheckChoice& choice, Console& console, const std::filesystem::path& home);

/// Where a mark was found on a label, from the label's own left and top edges.
struct MarkAt {
    measure::Length left, top;
};

/// The labels as this printer must be told of them, so that what it prints lies where they lie; `mark` is where each
/// mark belongs. Steps of a sheet with one column or one row stay.
job::LabelStock as_measured(job::LabelStock labels, measure::Length mark, MarkAt first, MarkAt last);

}  // namespace kerfpacket::cli
