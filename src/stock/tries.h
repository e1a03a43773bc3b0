#pragma once
// Quick ways to a good plan; whether it is the least is not their business.

#include <optional>

#include "stock/relaxation.h"

namespace kerfpacket::stock {

/// Longest blank first, each into the first stick that has room: the rack's, then those of one that is for sale.
std::optional<Plan> first_fit(const Problem& problem, const Stick& for_sale);

/// Stick by stick what is worth most by the prices.
std::optional<Plan> filled(const Problem& problem, const Prices& prices);

/// The loads of a relaxation as often as it cuts them whole, and once more where the part left is over `up_from`;
/// then filled by its prices.
std::optional<Plan> rounded(const Problem& problem, const Relaxation& relaxation, double up_from);

/// Keeps the whole sticks of the relaxation, or its largest part where there are none, and solves again for what is
/// left. `skip`: takes the part that is so many places behind the largest, the first time. Nothing where the plan would
/// cost more than `target`, or the steps do not suffice.
std::optional<Plan> dived(const Problem& problem, Cost target, std::size_t skip, std::int64_t& steps);

}  // namespace kerfpacket::stock
