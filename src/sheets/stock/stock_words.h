#pragma once
// What the stock plan says, on its sheet and on the command line.

#include <string>
#include <vector>

#include "plan/stock_plan.h"
#include "sheets/layout/kit.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

/// "A", "A, 2 of 3", "B, left leg", "A, segment 2"; one that is not to be cut says so.
std::string blank_name(const plan::StockBlank& blank, const Kit& kit);
/// The same with the width it is ripped to, where the board of stock is wider.
std::string blank_to_cut(const plan::StockSection& section, const plan::StockBlank& blank, const Kit& kit,
                         const Tape& tape);
/// Several of them, with commas.
std::string blank_names(const std::vector<plan::StockBlank>& blanks, const Kit& kit);
/// "3/4 x 7-1/4 in MDF", "casing board, 7-1/4 in wide".
std::string section_text(const plan::StockSection& section, const Kit& kit, const Tape& tape);
/// A length of stock as it is asked for: "12 ft (144 in)", "3600 mm".
std::string stock_length(Length length, const Kit& kit, const Tape& tape);
/// "18.40".
std::string price_text(std::int64_t cents, const Kit& kit);
/// How much of a section, in percent, its blanks use.
std::string used_text(const plan::StockSection& section, const Kit& kit);
/// What all that is bought comes to; empty where nothing is.
std::string total_text(const plan::StockSection& section, const Kit& kit, const Tape& tape);
/// Whether another plan could buy less, and how much.
std::string proof_text(const plan::StockSection& section, const Kit& kit, const Tape& tape);
/// Names of boards or openings, with commas.
std::string names_text(const std::vector<std::string>& names);
/// Which boards are not to be cut and what is not in the plan, a sentence each; none for nothing.
std::vector<std::string> stop_notes(const plan::StockPlan& plan, const Kit& kit);
/// What else must be known of a section before its stock is bought, a sentence each; none for nothing.
std::vector<std::string> section_notes(const plan::StockPlan& plan, const plan::StockSection& section, const Kit& kit,
                                       const Tape& tape);
/// The same of all sections together.
std::vector<std::string> plan_notes(const plan::StockPlan& plan, const Kit& kit, const Tape& tape);
/// "offcut 23-3/8 in: KEEP".
std::string offcut_text(const plan::CutStick& stick, const Kit& kit, const Tape& tape);
/// How a board is begun and measured.
std::string how_to_cut(const plan::StockPlan& plan, const Kit& kit, const Tape& tape);
/// "Board 3: 3/4 x 7-1/4 in MDF, 12 ft (144 in)".
std::string stick_text(const plan::StockSection& section, const plan::CutStick& stick, int n, const Kit& kit,
                       const Tape& tape);
/// Where each blank ends, from the sawn end of the board: kerfs between them included.
std::vector<Length> running_ends(const plan::StockPlan& plan, const plan::CutStick& stick);

}  // namespace kerfpacket::sheets
