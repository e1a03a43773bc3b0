#pragma once
// One kerf cut deeper than the others by mistake: what to do about it.

#include "bend/cell.h"

namespace kerfpacket::bend {

/// Keep it; ease it by deepening the two kerfs on each side; fill it stiff, so that its neighbours take its share;
/// scrap the board.
enum class Mend { keep, ease, fill, scrap };

/// Utilisations are strain over break strain.
struct Overcut {
    Mend mend = Mend::keep;
    Length web;         ///< left under the kerf; 0 when it is cut through
    double before = 0;  ///< of the kerf as it was meant
    double alone = 0;   ///< of the deep kerf between two good ones
    double eased = 0;   ///< of the deep kerf when its neighbours are deepened to `ease_depth`
    double filled = 0;  ///< of its neighbours when it is filled
    Length ease_depth;  ///< halfway between the good depth and the deep one
};

/// `cell` is the kerf as it was meant, at `radius` of the length-keeping line; `depth` what was cut. The moment is the
/// same along a few kerfs, so strain goes with 1/t^2; the form fixes what the group turns together, and each turns by
/// its own softness. Source: worked out for this project from the stiffness formula; judgement, no test.
Overcut overcut(const Cell& cell, const Material& material, KerfsOn side, Length radius, Length depth);

/// The greatest depths that are kept, eased and filled; each at least the one before it.
struct OvercutLimits {
    Length keep;
    Length ease;
    Length fill;
};
OvercutLimits overcut_limits(const Cell& cell, const Material& material, KerfsOn side, Length radius);

}  // namespace kerfpacket::bend
