#include "bend/spacing.h"

#include "bend/limit.h"
#include "measure/require.h"

namespace kerfpacket::bend {

namespace {

/// Finer than anybody marks.
constexpr Length fine_enough = Length::mm(0.01);

}  // namespace

SpacingSearch::SpacingSearch(const Cell& cell, const Material& material, KerfsOn side, Length least, Length most)
    : cell_(cell), material_(material), side_(side), least_(least), most_(most) {
    measure::require(least <= most, "the least spacing is not the largest");
}

bool SpacingSearch::ok(Length spacing, Length radius) {
    const auto [known, added] = tightest_.try_emplace(spacing.mm());
    if (added) {
        cell_.spacing = spacing;
        known->second = tightest(cell_, material_, side_).radius;
    }
    return known->second <= radius;
}

Length SpacingSearch::widest(Length radius) {
    if (ok(most_, radius)) return most_;
    if (!ok(least_, radius)) return least_;
    Length good = least_;
    Length bad = most_;
    while (bad - good > fine_enough) {
        const Length middle = (good + bad) / 2;
        (ok(middle, radius) ? good : bad) = middle;
    }
    return good;
}

}  // namespace kerfpacket::bend
