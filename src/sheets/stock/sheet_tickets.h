#pragma once
// Cut tickets of sheets: rip to width, then crosscut.

#include "plan/stock_plan.h"
#include "sheets/layout/flow.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// A ticket for each sheet, drawn to scale; nothing where the plan has none.
void add_sheet_tickets(Flow& flow, const plan::StockPlan& plan, const Tape& tape);

/// The columns of cut tickets: a cut, what it gives, the stop, where it ends, who did it.
std::vector<FlowTable::Column> ticket_columns(const Kit& kit);
/// The same of other cuts.
std::vector<FlowTable::Column> ticket_columns(const std::string& cut, const std::string& what, const std::string& stop,
                                              const std::string& ends, const Kit& kit);
/// A row with a box to tick when the cut is done and a line for who did it.
void ticket_row(Flow& flow, FlowTable& table, const std::vector<std::string>& cells);

}  // namespace kerfpacket::sheets
