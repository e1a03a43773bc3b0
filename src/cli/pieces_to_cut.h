#pragma once
// Which pieces of a plan a machine may be told of.

#include <string>
#include <vector>

#include "cli/console.h"
#include "plan/plan.h"

namespace kerfpacket::cli {

/// All, or the one of that id. A board that is not to be cut is told and left out; so is an id that the job does not
/// have, with those that it has.
std::vector<const plan::Piece*> pieces_to_cut(const plan::Plan& plan, const std::string& id, Console& console);

}  // namespace kerfpacket::cli
