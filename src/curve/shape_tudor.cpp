// The four-centred head: on each side a small arc from the spring, tangent to it a larger one up to the point.

#include <cmath>

#include "curve/arch.h"

namespace kerfpacket::curve {
namespace {

using job::say;

/// Half a head to build: a = half, b = rise over its spring.
struct Half {
    Length half;
    Length rise;

    bool low() const { return rise < half; }
    /// Radius of the one arc that stands plumb on the spring and ends at the point: (a^2 + b^2)/(2 a).
    Length one_arc() const { return half / 2 + rise * (rise / (2 * half)); }
    /// From here up no side arc has room: a low head's would rise over the point, a high head's is the one arc.
    Length side_limit() const { return low() ? rise : one_arc(); }
    /// Down to here no crown arc makes a point with side arcs of radius r. A low head's crown is then level, as in a
    /// three-centred head, R = (a^2 + b^2 - 2 a r)/(2 (b - r)); a high head's is the one arc.
    Length crown_limit(Length side) const {
        if (!low()) return one_arc();
        const Length below = 2 * (rise - side);
        return half * ((half - 2 * side) / below) + rise * (rise / below);
    }
    /// The same limit for r when the crown radius is given: r = (2 R b - a^2 - b^2)/(2 (R - a)).
    Length side_limit(Length crown) const {
        if (!low()) return one_arc();
        const Length below = 2 * (crown - half);
        return rise * ((2 * crown - rise) / below) - half * (half / below);
    }
};

struct Radii {
    Length side;
    Length crown;
};

/// Ours: side arcs of half the rise or a quarter of the span, crown arcs of twice the least radius that makes a point.
Radii chosen(const Half& h, const job::Opening& opening) {
    Length side = std::min(h.half, h.rise) / 2;
    if (opening.side_radius) side = opening.side_radius->value;
    else if (opening.crown_radius) side = std::min(side, h.side_limit(opening.crown_radius->value) / 2);
    return {side, opening.crown_radius ? opening.crown_radius->value : 2 * h.crown_limit(side)};
}

/// With the side arc's centre at (-p, 0), p = a - r, and D = R - r, the arcs are tangent where the normal stands at t:
/// p cos t - b sin t = (p^2 + b^2 + D^2 - R^2)/(2 D), the crown arc's centre being D along that normal from the other.
HalfArch half_arch(const Half& h, const Radii& radii) {
    const Length p = h.half - radii.side;
    const Length d = radii.crown - radii.side;
    const Length reach = measure::hypot(p, h.rise);
    const double off = ((reach - radii.side) / reach) * ((reach + radii.side) / (2 * d)) - radii.side / reach;
    const double side = std::acos(off) - std::atan2(h.rise.mm(), p.mm());
    const Point joint = Point{-p, {}} + Direction{-std::cos(side), std::sin(side)} * radii.side;
    const Point crown{{}, h.rise};
    const double heading = Angle::pi / 2 - side;
    const double turn = 2 * (geom::direction(joint, crown).angle().radians() - heading);
    return {{{-h.half, {}}, joint, Angle::radians(-side)}, {joint, crown, Angle::radians(turn)}};
}

std::optional<job::Diagnostics> radii_do_not_meet(const Frame& frame, const Half& left, const Half& right) {
    const auto& side = frame.opening.side_radius;
    const auto& crown = frame.opening.crown_radius;
    const Length most_side = std::min(left.side_limit(), right.side_limit());
    if (side && side->value >= most_side - slack)
        return refused(side->at,
                       say("side_large", "side_radius {radius} is too large to meet a crown arc",
                           {{"radius", frame.shown(side->value)}}),
                       say("most_here", "expected at most {most} with this span and rise",
                           {{"most", shown_below(most_side, frame.units)}}))
            .value();
    const Length given_side = side ? side->value : Length();
    const Length least_crown = std::max(left.crown_limit(given_side), right.crown_limit(given_side));
    if (!crown || crown->value > least_crown + slack) return std::nullopt;
    const job::Told least = shown_above(least_crown, frame.units);
    job::Told hint = side ? say("crown_least_with", "expected at least {least} with side_radius {side}",
                                {{"least", least}, {"side", frame.shown(given_side)}})
                          : say("crown_least", "expected at least {least}", {{"least", least}});
    const Length bare = std::max(left.crown_limit({}), right.crown_limit({}));
    if (side && crown->value > bare + slack) {
        const Length most = std::min(left.side_limit(crown->value), right.side_limit(crown->value));
        hint = say("or_side", "{crown}, or a side_radius of at most {most}",
                   {{"crown", std::move(hint)}, {"most", shown_below(most, frame.units)}});
    }
    const job::Told given = frame.shown(crown->value);
    return refused(crown->at,
                   side ? say("crown_with_side",
                              "crown_radius {crown} is too small to make a point with side_radius {side}",
                              {{"crown", given}, {"side", frame.shown(given_side)}})
                        : say("crown_small", "crown_radius {crown} is too small to make a point", {{"crown", given}}),
                   std::move(hint))
        .value();
}

}  // namespace

Arch tudor(const Frame& frame) {
    if (auto wrong = half_without_rise(frame)) return tl::unexpected(*wrong);
    const Half left{frame.half(), frame.left_rise()};
    const Half right{frame.half(), frame.right_rise()};
    if (auto wrong = radii_do_not_meet(frame, left, right)) return tl::unexpected(*wrong);
    return joined(frame, half_arch(left, chosen(left, frame.opening)), half_arch(right, chosen(right, frame.opening)),
                  false);
}

}  // namespace kerfpacket::curve
