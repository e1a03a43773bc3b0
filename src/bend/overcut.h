#pragma once
// One kerf cut deeper than the others by mistake: what to do about it.

#include <optional>

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
    double alone = 0;   ///< of the deep kerf between those that are there; this and the next 0 when there is no web
    double eased = 0;   ///< the worst of the deep kerf between kerfs of `ease_depth` and of these between good ones
    double filled = 0;  ///< of its neighbours when it is filled
    Length ease_depth;  ///< halfway between the good depth and the deep one
};

/// `cell` is the kerf as it was meant, at `radius` of the length-keeping line; `depth` what was cut, no less than
/// meant, and `beside` the shallowest of the two kerfs on each side: deeper than meant where they were deepened. The
/// moment that bends the kerfs around it to the form bends the deep one too, so that its strain is theirs by the square
/// of the webs. A filled kerf bends nothing: its neighbours bend half its stretch each, as if 1-1/2 spacings
/// apart. Source: worked out for this project from the stiffness formula; judgement, no test.
Overcut overcut(const Cell& cell, const Material& material, KerfsOn side, Length radius, Length depth,
                std::optional<Length> beside = std::nullopt);

/// The greatest depths that are kept, eased and filled, each at least the one before it; the meant depth where not even
/// a step more is. In whole steps from the meant depth.
struct OvercutLimits {
    Length keep;
    Length ease;
    Length fill;
};
OvercutLimits overcut_limits(const Cell& cell, const Material& material, KerfsOn side, Length radius, Length step);

}  // namespace kerfpacket::bend
