#pragma once
// Depth and spacing: as given, by common practice where that is ok, else chosen among all settings that are.

#include <span>

#include "plan/choice.h"
#include "plan/lay_out.h"
#include "plan/search.h"

namespace kerfpacket::plan {

/// A board with the settings that the job gives, or the best there are, and how they came about; without neighbours.
struct Settled {
    Laid laid;
    Settings settings;
};
/// Or why there are none; where nothing but the bend itself is in the way, without a word: `nothing_works` finds it.
/// Ends always: depths are tried in whole steps, spacings by bisection, each once.
tl::expected<Settled, job::Diagnostics> settle(const Request& wanted, const Wood& wood, const job::Job& job);

/// The same of a board with coupons: `woods` is what is known of it without them, with the first, and so on, the last
/// what counts. What was chosen before a coupon is kept where it is ok by the coupon too, kerf by kerf: the board may
/// be kerfed already, and the coupon was bent for it.
tl::expected<Settled, job::Diagnostics> settle(const Request& wanted, std::span<const Wood> woods, const job::Job& job);

/// What such a run comes to, or none where the board is refused. So is proven what is offered in a refusal.
std::optional<Choice> attempt(const Request& wanted, const Wood& wood, const job::Job& job);

/// The same; where it would be refused for its bend, what the refusal speaks of.
std::optional<Choice> attempt_or_break(const Request& wanted, const Wood& wood, const job::Job& job);

/// The board with nothing of its cut given.
job::Board all_left_to_solve(const job::Board& board);

}  // namespace kerfpacket::plan
