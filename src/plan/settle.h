#pragma once
// Depth and spacing: as given, by common practice where that is ok, else chosen among all settings that are.

#include "plan/wood.h"

namespace kerfpacket::plan {

/// The piece with the settings that the job gives, or the best there are; or why there are none and what would help.
/// Ends always: depths are tried in whole steps, spacings by bisection, each once.
tl::expected<Piece, job::Diagnostics> settle(const Request& wanted, const Wood& wood, const job::Job& job);

/// The same run for a board that is only thought of: what it comes to, or none where it is refused. So is proven what
/// is offered in a refusal.
std::optional<Choice> attempt(const Request& wanted, const Wood& wood, const job::Job& job);

}  // namespace kerfpacket::plan
