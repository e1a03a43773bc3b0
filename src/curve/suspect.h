#pragma once
// The one measured point that all others contradict.

#include <optional>
#include <vector>

#include "curve/survey.h"

namespace kerfpacket::curve {

/// Leaves points out in turn. A point is suspect where, without it, the others agree with a circle, with an ellipse or
/// each with its neighbours, and the point itself stands off
///   - more than 1/4 in,
///   - more than six times as far as half of the others do,
///   - more than three times as far as any other does.
/// The first and the last point have others on one side only: they are suspect only where a circle meets the others
/// eight times as well, and there are twelve. Of fewer than eight points none is suspect. Of several such points it is
/// the one without which the others agree best. Common practice, no source: the factors are set so that honest
/// measuring (1/32 in) raises no suspicion.
std::optional<Survey::Suspect> find_suspect(const std::vector<Point>& points);

}  // namespace kerfpacket::curve
