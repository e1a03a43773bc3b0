#include "plan/proven_radius.h"

#include <algorithm>
#include <cmath>
#include <utility>

namespace kerfpacket::plan {
namespace {

/// A quarter circle that bends like the spot, of that radius on the seen face.
curve::Curve quarter(const TightSpot& spot, Length plain, job::Surface measured_to, Length thickness) {
    const Length radius = spot.measured_for(plain, measured_to, thickness);
    const bool right = spot.on == bend::KerfsOn::outside;
    return curve::Curve::of(
        Path::arc({Length(), Length()}, {radius, right ? radius : -radius}, Angle::degrees(right ? -90 : 90)));
}

}  // namespace

std::optional<Length> proven_radius(const Request& wanted, const job::Board& board, const Bent& bent,
                                    const job::Job& job, bend::Verdict verdict,
                                    const std::function<bool(const Settled&)>& will_do) {
    const auto least = least_radius(bent, job.header.units, verdict);
    if (!least) return std::nullopt;
    const Length step = depth_step(job.header.units);
    const auto holds = [&](int steps) {
        const Length radius = step * steps;
        return radius > bent.thickness && std::all_of(bent.spots.begin(), bent.spots.end(), [&](const TightSpot& spot) {
                   const Request thought_of =
                       along(wanted, board, quarter(spot, radius, bent.measured_to, bent.thickness));
                   const auto found = settle(thought_of, bent.wood, job);
                   return found && will_do(*found);
               });
    };
    // What is laid out comes out a little worse than the formulas, for its kerfs are a whole number, or much worse
    // where it is the chance that counts: in strides that double, then between the last two.
    const int first = static_cast<int>(std::ceil(*least / step - 1e-6));
    if (holds(first)) return step * first;
    int fails = first, stride = 1;
    while (!holds(first + stride)) {
        fails = first + stride;
        stride *= 2;
        if (stride > 3 * first) return std::nullopt;
    }
    int does = first + stride;
    // Far off a sixty-fourth is near enough.
    while (does - fails > std::max(1, does / 64)) {
        const int middle = fails + (does - fails) / 2;
        (holds(middle) ? does : fails) = middle;
    }
    return step * does;
}

Length in_plane(const Request& wanted, Length radius) {
    return wanted.splay ? radius * wanted.splay->cosine() : radius;
}

Request along(const Request& wanted, const job::Board& board, curve::Curve curve) {
    Request other = wanted.with(board);
    const Length end = curve.length();
    other.curve = std::move(curve);
    other.ends = {CurveEnd{}, CurveEnd{BoardEnd::Meets::nothing, {}, end, end}};
    other.tails = {};
    return with_bend(std::move(other));
}

}  // namespace kerfpacket::plan
