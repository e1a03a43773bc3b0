#include "bend/spacing.h"

#include <utility>

#include "bend/limit.h"
#include "measure/require.h"

namespace kerfpacket::bend {

namespace {

/// Finer than anybody marks.
constexpr Length fine_enough = Length::mm(0.01);

}  // namespace

SpacingSearch::SpacingSearch(Cell cell, const Material& material, KerfsOn side, Length least, Length most)
    : kerfs_(std::move(cell), material.softness), material_(material), side_(side), least_(least), most_(most) {
    measure::require(least <= most, "the least spacing is not the largest");
    at_ends_ = {tightest_at(least), tightest_at(most)};
}

Length SpacingSearch::tightest_at(Length spacing) { return tightest(kerfs_.at(spacing), material_, side_).radius; }

Length SpacingSearch::widest(Length radius) {
    if (at_ends_[1] <= radius) return most_;
    if (at_ends_[0] > radius) return least_;
    Length good = least_;
    Length bad = most_;
    for (std::size_t i = 1; bad - good > fine_enough;) {
        const Length middle = (good + bad) / 2;
        if (i >= at_middles_.size()) at_middles_.resize(2 * i + 1);
        std::optional<Length>& known = at_middles_[i];
        if (!known) known = tightest_at(middle);
        const bool ok = *known <= radius;
        (ok ? good : bad) = middle;
        i = 2 * i + (ok ? 1 : 0);
    }
    return good;
}

}  // namespace kerfpacket::bend
