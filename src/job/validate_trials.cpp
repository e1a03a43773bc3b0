// What was tried before the job: a groove against the fence, a coupon.
#include "job/validate.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

/// Rounding between units must not turn an exact fit into a mistake.
constexpr Length slack = 0.001_mm;
/// Less than this cannot be told from a board that lies flat.
constexpr Length least_rise = 0.125_in;
/// Up to here it is known how a board bends whose ends are pushed together. Source: src/bend/NOTES.md.
constexpr double most_rise_of_ends = 0.84;

}  // namespace

void check_saw(Context& context, const Saw& saw) {
    if (!saw.trial || !known(saw.trial->depth)) return;
    const auto& [depth, at_fence, ends] = *saw.trial;
    if (known(at_fence) && at_fence.value >= depth.value - slack)
        context.error(at_fence.at,
                      "trial_at_fence " + context.shown(at_fence.value) + " is no less than trial_depth, " +
                          context.shown(depth.value),
                      "a groove gets shallower where the blade stops before the fence");
    const Length reach = saw.blade_diameter.value / 2;
    if (given(saw.blade_diameter) && depth.value >= reach)
        context.error(
            depth.at, "trial_depth " + context.shown(depth.value) + " is too much for the blade",
            "a blade of " + context.shown(saw.blade_diameter.value) + " reaches less than " + context.shown(reach));
}

void check_coupon(Context& context, const Coupon& coupon) {
    const Sourced<Length>& chord = coupon.chord;
    const Sourced<Length>& rise = coupon.rise;
    if (!known(chord) || !known(rise)) return;
    const bool one_kerf = known(coupon.held) && coupon.held.value == Held::one_kerf;
    if (one_kerf && known(coupon.outcome) && coupon.outcome.value != Outcome::closed)
        context.error(coupon.outcome.at, "a board with one kerf is raised until the kerf is closed",
                      R"(expected result = "closed"; chord from the kerf to where the rise is measured)");
    const std::string name = "rise " + context.shown(rise.value);
    const Length most = chord.value * most_rise_of_ends;
    if (rise.value < least_rise - slack)
        context.error(rise.at, name + " is too flat to tell anything",
                      "what a tape cannot read would count for too much: bend it to a rise of " +
                          context.shown(context.unit == Unit::millimetre ? 25_mm : 1_in) + " or more");
    else if (rise.value > chord.value + slack)
        context.error(rise.at, name + " is more than the chord, " + context.shown(chord.value),
                      "expected the chord from end to end of the bent coupon, and the rise at its middle");
    else if (known(coupon.held) && coupon.held.value == Held::ends && rise.value > most + slack)
        context.error(
            rise.at, name + " is more than 0.84 of the chord, " + context.shown(chord.value),
            "a coupon whose ends are pushed together further tells nothing: expected at most " + context.shown(most));
}

}  // namespace kerfpacket::job
