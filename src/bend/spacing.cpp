#include "bend/spacing.h"

#include "bend/limit.h"
#include "measure/require.h"

namespace kerfpacket::bend {

namespace {

/// Finer than anybody marks.
constexpr Length fine_enough = Length::mm(0.01);

}  // namespace

Length widest_spacing(Cell cell, const Material& material, KerfsOn side, Length radius, Length least, Length most) {
    measure::require(least <= most, "the least spacing is not the largest");
    const auto ok = [&](Length spacing) {
        cell.spacing = spacing;
        return tightest(cell, material, side).radius <= radius;
    };
    if (ok(most)) return most;
    if (!ok(least)) return least;
    Length good = least;
    Length bad = most;
    while (bad - good > fine_enough) {
        const Length middle = (good + bad) / 2;
        (ok(middle) ? good : bad) = middle;
    }
    return good;
}

}  // namespace kerfpacket::bend
