#pragma once
// What to say of a bend that no setting takes: why, and what would.

#include "plan/request.h"
#include "plan/wood.h"

namespace kerfpacket::plan {

/// The refusal of a board, at the place in the job file that asks for it. The hint names whatever would do: free
/// settings, a larger radius, a thinner board, laminated plies with the lengths of their blanks, another material.
/// Whatever is kerfed was run through `attempt` before it is named.
job::Diagnostics nothing_works(const Request& wanted, const Wood& wood, const job::Job& job);

}  // namespace kerfpacket::plan
