#pragma once
// A piece with everything the sheets say of it but its lines and cautions.

#include "plan/request.h"

namespace kerfpacket::plan {

/// Settles depth and spacing, lays out the kerfs, and works out what the cards say besides: saw, small errors, kerfs
/// cut too deep, the chart of limits, the coupon.
tl::expected<Piece, job::Diagnostics> make_piece(const Request& wanted, const job::Job& job);

}  // namespace kerfpacket::plan
