// Heads that follow one law from the crown to the springs: ellipse, parabola, catenary.

#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>

#include "curve/arch.h"

namespace kerfpacket::curve {
namespace {

/// A curve over level springs at (-half, crown - rise) and (half, crown - rise), its crown at parameter 0, its springs
/// at parameters -end and end.
struct Law {
    std::function<Jet(double)> at;
    double end = 1;
};
using MakeLaw = Law (*)(Length half, Length rise, Length crown);

Law ellipse(Length half, Length rise, Length crown) {
    const auto at = [=](double u) {
        const double s = std::sin(u);
        const double c = std::cos(u);
        return Jet{{half * s, crown - rise + rise * c}, {half * c, rise * -s}, {half * -s, rise * -c}};
    };
    return {at, Angle::pi / 2};
}

/// By the parameter whose hyperbolic sine is the slope: by x itself the length's integrand has all but a kink at the
/// crown of a steep one.
Law parabola(Length half, Length rise, Length crown) {
    const double slope = 2 * rise / half;
    const auto at = [=](double u) {
        const double s = std::sinh(u) / slope;
        const double c = std::cosh(u) / slope;
        return Jet{{half * s, crown - rise * (s * s)},
                   {half * c, rise * (-2 * s * c)},
                   {half * s, rise * (-2 * (s * s + c * c))}};
    };
    return {at, std::asinh(slope)};
}

/// cosh(x) - 1 without losing digits near 0.
double cosh_less_one(double x) { return 2 * std::sinh(x / 2) * std::sinh(x / 2); }

/// Half the span over the catenary's parameter a: (cosh k - 1)/k = rise/half.
double catenary_ratio(double rise_to_half) {
    const auto off = [=](double k) { return cosh_less_one(k) / k - rise_to_half; };
    // (cosh k - 1)/k is more than k/2, so the root lies under twice the wanted value.
    const double high = 2 * rise_to_half;
    double low = high;
    while (off(low) > 0) low /= 2;
    if (low == high) return high;
    boost::uintmax_t steps = 100;
    const auto bracket =
        boost::math::tools::toms748_solve(off, low, 2 * low, boost::math::tools::eps_tolerance<double>(52), steps);
    return (bracket.first + bracket.second) / 2;
}

/// A hanging chain turned over: y = crown - a (cosh(x/a) - 1).
Law chain(Length half, Length rise, Length crown) {
    const double k = catenary_ratio(rise / half);
    const auto at = [=](double u) {
        return Jet{{half * u, crown - half * (cosh_less_one(k * u) / k)},
                   {half, half * -std::sinh(k * u)},
                   {{}, half * (-k * std::cosh(k * u))}};
    };
    return {at, 1};
}

Arch follow(const Frame& frame, MakeLaw make) {
    if (auto wrong = half_without_rise(frame)) return tl::unexpected(*wrong);
    const Law left = make(frame.half(), frame.left_rise(), frame.rise);
    if (frame.level()) return std::vector{Curve({Parametric{left.at, -left.end, left.end}})};
    const Law right = make(frame.half(), frame.right_rise(), frame.rise);
    return std::vector{Curve({Parametric{left.at, -left.end, 0}, Parametric{right.at, 0, right.end}})};
}

}  // namespace

Arch semicircular(const Frame& frame) {
    if (!frame.level()) return elliptical(frame);
    return std::vector{Curve({geom::Segment{frame.left, frame.right, Angle::degrees(-180)}})};
}

Arch elliptical(const Frame& frame) { return follow(frame, ellipse); }
Arch parabolic(const Frame& frame) { return follow(frame, parabola); }
Arch catenary(const Frame& frame) { return follow(frame, chain); }

}  // namespace kerfpacket::curve
