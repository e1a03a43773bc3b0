#pragma once
// What the place of a piece has to warn of: a head as a whole, and the points that its curve was measured by.

#include <optional>
#include <vector>

#include "curve/shape.h"
#include "plan/piece.h"

namespace kerfpacket::plan {

/// Entry of a horseshoe, springs that differ, radii that the program chose: told with the head's first board.
std::vector<Caution> head_cautions(const curve::Head& head, const job::Opening& opening);

/// A measured point that looks mistyped.
std::optional<Caution> of_suspect(const curve::Survey& survey);

/// A fit that is not the recommended one, a curve smoothed beyond the tape, points too far apart.
std::vector<Caution> of_survey(const std::optional<curve::Survey>& survey);

}  // namespace kerfpacket::plan
