#pragma once
// The whole job computed: pieces, kerf positions, verdicts, lines to draw. Sheets only lay this out.

#include <optional>
#include <string>
#include <vector>

#include <tl/expected.hpp>

#include "job/job.h"
#include "job/values.h"
#include "plan/piece.h"
#include "plan/stock_plan.h"

namespace kerfpacket::plan {

/// An opening or a wall that cannot be made as the job asks for it: nothing of it is computed.
struct Refused {
    std::string id;
    Kind kind = Kind::arch_liner;
    std::vector<job::Value> asked;  ///< what the job file says of it
    job::Diagnostics reasons;       ///< one or more, of severity `refused`
};

struct Plan {
    job::Header header;
    job::Saw saw;
    job::Printer printer;
    std::string fingerprint;
    std::vector<Piece> pieces;        ///< openings, then walls, in file order; boards of one opening together
    job::PacketWish packet{};         ///< what of it is printed
    std::vector<job::Taken> taken{};  ///< what the job file leaves out, of all of it
    std::vector<Refused> refused{};   ///< the same of what cannot be made, while there are pieces that can
    job::Stock stock{};
    std::optional<StockPlan> stock_plan{};  ///< where `wants_stock_plan`
    bool cautions() const;  ///< whether any piece has a caution, a verdict other than ok, or cannot be made
    int blanks() const;     ///< quantities counted
    int cuts() const;
};

/// The boards whose material is neither known nor one of the job's own `names`, told with what is near.
job::Diagnostics unknown_materials(const std::vector<job::Sourced<std::string>>& used,
                                   const std::vector<std::string>& names);

/// Computes the job. What cannot be made stands in `refused`; where nothing can, or a material is not known, there is
/// no plan but what is wrong and where the job file asks for it.
tl::expected<Plan, job::Diagnostics> make_plan(const job::Job& job);

}  // namespace kerfpacket::plan
