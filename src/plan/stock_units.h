#pragma once
// Lengths in the whole units of the stock plan, inside this room only.

#include <algorithm>
#include <cmath>

#include "measure/length.h"
#include "stock/problem.h"

namespace kerfpacket::plan {

using measure::Length;
using measure::Unit;

/// Whole units of a section: 1/64 in, or 1/2 mm. What computing leaves (1e-6 of a unit) is none.
class Ruler {
public:
    explicit Ruler(Unit unit) : one_(unit == Unit::inch ? Length::inches(1.0 / 64) : Length::mm(0.5)) {}
    stock::Units up(Length length) const { return static_cast<stock::Units>(std::ceil(length / one_ - 1e-6)); }
    stock::Units down(Length length) const { return static_cast<stock::Units>(std::floor(length / one_ + 1e-6)); }
    Length length(stock::Units units) const { return one_ * static_cast<double>(units); }

    /// What is cut out, with its kerf; and what holds it, both its ends trimmed. The kerf is rounded up in both, so
    /// that what fits to a hair is seen to fit.
    stock::Units cut(Length length, Length kerf) const { return up(length) + up(kerf); }
    stock::Units room(Length length, Length end_trim, Length kerf) const {
        return std::max<stock::Units>(0, down(length - end_trim * 2) + up(kerf));
    }

private:
    Length one_;
};

}  // namespace kerfpacket::plan
