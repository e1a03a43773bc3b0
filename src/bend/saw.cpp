#include "bend/saw.h"

#include <algorithm>
#include <cmath>

#include "measure/require.h"

namespace kerfpacket::bend {

Length groove_ramp(Length blade_diameter, Length depth) {
    measure::require(depth <= blade_diameter / 2, "a kerf is at most half a blade deep");
    return Length::mm(std::sqrt(depth.mm() * (blade_diameter - depth).mm()));
}

Length spacer(Length rear_limit, measure::Unit unit) {
    const Length step = unit == measure::Unit::inch ? Length::inches(1.0 / 16) : Length::mm(0.5);
    // A hair of arithmetic must not add a step.
    return std::max(Length(), step * std::ceil(rear_limit / step - 1e-6));
}

Length travel_needed(Length board_width, Length spacer, Length rear_limit) { return board_width + spacer - rear_limit; }

Length spacer_saving(Length blade_diameter, Length loss) { return groove_ramp(blade_diameter, loss); }

Length width_reached(Length travel, Length spacer, Length rear_limit) { return travel - spacer + rear_limit; }

Length rear_limit_from_end(Length blade_diameter, Length depth, Length ends) {
    return ends + groove_ramp(blade_diameter, depth);
}

Length rear_limit_from_trial(Length blade_diameter, Length depth, Length at_fence) {
    const double r = blade_diameter.mm() / 2;
    const double below_centre = r - (depth - at_fence).mm();
    return Length::mm(std::sqrt(r * r - below_centre * below_centre));
}

}  // namespace kerfpacket::bend
