#pragma once
// Setting up a sliding saw for part-depth cuts: ramp at the fence, spacer, travel.

#include "measure/fraction.h"
#include "measure/length.h"

namespace kerfpacket::bend {

using measure::Length;

/// How far in front of the blade's centre the bottom of the groove curves up: sqrt(D d - d^2).
Length groove_ramp(Length blade_diameter, Length depth);

/// Spacer that gives full depth at the back edge, max(0, rear limit of the blade centre), as it is made: the next
/// sixteenth of an inch or half millimetre up. A thinner one leaves the groove shallow at the back edge.
Length spacer(Length rear_limit, measure::Unit unit);

/// Slide travel that a board needs with that spacer: W + w - x_c.
Length travel_needed(Length board_width, Length spacer, Length rear_limit);

/// How much shorter the spacer may be when the groove may be `loss` shallower at the back edge: sqrt(D e - e^2).
Length spacer_saving(Length blade_diameter, Length loss);

/// How much of a board's width a slide of this travel grooves to full depth.
Length width_reached(Length travel, Length spacer, Length rear_limit);

/// Rear limit of the blade centre from a trial groove whose end lies `ends` in front of the fence: that and the ramp.
Length rear_limit_from_end(Length blade_diameter, Length depth, Length ends);

/// Rear limit of the blade centre from a trial groove that meets the fence at depth `at_fence`.
Length rear_limit_from_trial(Length blade_diameter, Length depth, Length at_fence);

}  // namespace kerfpacket::bend
