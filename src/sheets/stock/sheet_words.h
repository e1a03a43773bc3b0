#pragma once
// What the stock plan says of sheets, on paper and on the command line.

#include <string>
#include <vector>

#include "plan/stock_plan.h"
#include "sheets/layout/kit.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// "3/4 in MDF, sheet".
std::string sheet_board(const plan::SheetSection& section, const Kit& kit, const Tape& tape);
/// "49 x 97 in".
std::string sheet_size(Length width, Length length, const Kit& kit, const Tape& tape);
/// "Sheet 2: 3/4 in MDF, sheet 49 x 97 in; strips 97 in long".
std::string sheet_text(const plan::SheetSection& section, const plan::CutSheet& sheet, int n, const Kit& kit,
                       const Tape& tape);
/// What all sheets that are bought come to; empty where none is.
std::string sheets_total(const plan::SheetSection& section, const Kit& kit, const Tape& tape);
/// Whether another plan with one width to a strip could buy less, and how much.
std::string sheets_proof(const plan::StockPlan& plan, const plan::SheetSection& section, const Kit& kit);
/// What else must be known of a section, a sentence each.
std::vector<std::string> sheets_notes(const plan::SheetSection& section, const Kit& kit, const Tape& tape);
/// How a sheet is begun, ripped and crosscut.
std::string how_to_rip(const plan::StockPlan& plan, const Kit& kit, const Tape& tape);
/// "strip 2, 7-1/4 in wide".
std::string strip_text(const plan::CutStrip& strip, std::size_t i, const Kit& kit, const Tape& tape);
/// Where a strip ends, from the sawn edge of the sheet.
Length strip_end(const plan::StockPlan& plan, const plan::CutStrip& strip);
/// "left over 32-5/8 x 97 in: KEEP".
std::string left_over_text(const plan::CutSheet& sheet, const Kit& kit, const Tape& tape);

}  // namespace kerfpacket::sheets
