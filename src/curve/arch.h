#pragma once
// What the shapes of heads are built from and give back; inside this room only.

#include <cmath>
#include <vector>

#include "curve/messages.h"
#include "curve/shape.h"

namespace kerfpacket::curve {

/// The figures of a head, in its frame: x = 0 in the middle of the span, the springs as much above y = 0 as below.
struct Frame {
    const job::Opening& opening;
    measure::Unit units = measure::Unit::inch;
    Point left;   ///< spring
    Point right;  ///< spring
    Length rise;  ///< of the crown over y = 0

    Length half() const { return right.x; }
    /// Of the crown over each spring.
    Length left_rise() const { return rise - left.y; }
    Length right_rise() const { return rise - right.y; }
    Length least_rise() const { return std::min(left_rise(), right_rise()); }
    Length most_rise() const { return std::max(left_rise(), right_rise()); }
    bool level() const { return left.y == right.y; }
    /// Distance of the springs, and its slope as a magnitude.
    Length string() const { return geom::distance(left, right); }
    Angle tilt() const { return Angle::radians(std::atan2(measure::abs(left.y - right.y).mm(), (2 * half()).mm())); }
    job::Told shown(Length value) const { return job::shown(value, units); }
};

/// Rounding between units must not turn an exact fit into a mistake.
inline constexpr Length slack = Length::mm(0.001);

/// The runs of the arch alone, from spring to spring, or what the figures cannot be.
using Arch = tl::expected<std::vector<Curve>, job::Diagnostics>;

// Over the string from spring to spring, tilted with it.
Arch segmental(const Frame& frame);
Arch horseshoe(const Frame& frame);
Arch eyebrow(const Frame& frame);
// Half and half, each from its own spring to the crown.
Arch semicircular(const Frame& frame);
Arch three_centred(const Frame& frame);
Arch pointed(const Frame& frame);
Arch tudor(const Frame& frame);
Arch elliptical(const Frame& frame);
Arch parabolic(const Frame& frame);
Arch catenary(const Frame& frame);

/// A half that stands on its own spring, made of arcs: from (-half, 0) to (0, rise).
using HalfArch = std::vector<geom::Segment>;
/// The two halves in their places, the right one mirrored: one run when they join smoothly, two when at a point.
std::vector<Curve> joined(const Frame& frame, const HalfArch& left, const HalfArch& right, bool smooth);

/// That both halves rise: unequal legs can leave the higher spring above the crown.
std::optional<job::Diagnostics> half_without_rise(const Frame& frame);

/// Measured points answered, and the curve of the answer that is used, in the frame of `points`.
struct Measured {
    Survey survey;
    Curve curve;
};
tl::expected<Measured, job::Diagnostics> measured(const std::vector<Point>& points, const job::Ordinates& ordinates,
                                                  Length least_radius, measure::Unit units);
/// The same with the middle between the curve's ends at the origin.
Measured centred(Measured measured);

}  // namespace kerfpacket::curve
