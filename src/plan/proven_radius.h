#pragma once
// The radius from which a board can be bent, proven by laying it out.

#include <functional>
#include <optional>

#include "plan/request.h"
#include "plan/search.h"
#include "plan/settle.h"

namespace kerfpacket::plan {

/// The least radius of the seen face, in whole steps of 1/16 in or 1 mm, at which quarter circles of `board`, one for
/// each way that the bend of `wanted` goes, will do when they are laid out. Looked for from the radius on that the
/// formulas give for that verdict, up to four times that; else none.
std::optional<Length> proven_radius(const Request& wanted, const job::Board& board, const Bent& bent,
                                    const job::Job& job, bend::Verdict verdict,
                                    const std::function<bool(const Settled&)>& will_do);

/// Such a radius as a carpenter measures it: of a splayed jamb on its narrow edge.
Length in_plane(const Request& wanted, Length radius);

/// What is asked of a curve that is only thought of: square ends, no tails.
Request along(const Request& wanted, const job::Board& board, curve::Curve curve);

}  // namespace kerfpacket::plan
