#pragma once
// The steps from the stock to the wall, in their order.

#include <optional>
#include <string>
#include <vector>

#include "plan/plan.h"
#include "sheets/layout/kit.h"
#include "sheets/layout/page_index.h"
#include "sheets/words/tape.h"

namespace kerfpacket::sheets {

struct WorkStep {
    std::string what;
    std::string how;
    std::string figure;
    std::optional<IndexEntry> told{};  ///< the sheet that tells the rest; none where the packet has none
    bool left_out = false;             ///< the job leaves that sheet out
    /// What the figure takes room for, where it is counted on sheets that are not known yet: the rows stand alike then.
    std::string widest{};
    bool stops = false;  ///< nothing after it before its outcome is known
};

/// What is done for one board. Sheets are looked up in `index`, and what is counted on them.
std::vector<WorkStep> work_steps(const plan::Plan& plan, const plan::Piece& piece, const std::vector<IndexEntry>& index,
                                 const Kit& kit, const Tape& tape);

}  // namespace kerfpacket::sheets
