#pragma once
// Measured ordinates answered three ways: the best circle, the best ellipse, a fair curve.

#include <array>
#include <optional>
#include <vector>

#include "curve/curve.h"
#include "job/job.h"

namespace kerfpacket::curve {

/// How far the measured points miss a curve, square to it, in the order of the points; to the left of travel (outward
/// of an arch) positive.
struct Misses {
    std::vector<Length> at;
    Length worst() const;  ///< largest magnitude
    std::size_t worst_point() const;
};

struct CircleFit {
    Point centre;
    Length radius;
    Misses misses;
};

/// Axes level and upright.
struct EllipseFit {
    Point centre;
    Length half_width;
    Length half_height;
    Misses misses;
};

struct FairFit {
    Curve curve;
    Misses misses;
    Misses left_out;  ///< how far each point but the two ends lies off the curve that the others alone would give
};

/// Geometric least squares (the sum of squared distances square to the circle is least): Gander, Golub, Strebel, BIT 34
/// (1994) 558-578. At least three points that are not in line; none otherwise, or where no circle is best.
std::optional<CircleFit> fit_circle(const std::vector<Point>& points);
/// Geometric least squares; at least five points. None where no ellipse fits better than a line or a parabola would.
std::optional<EllipseFit> fit_ellipse(const std::vector<Point>& points);

/// What a fair curve has to keep to.
struct Fairness {
    Length miss = job::usual_tape;  ///< of every point, at most, unless the radius asks for more
    Length least_radius;            ///< nowhere sharper; 0 for no limit
    std::optional<std::array<Angle, 2>> end_angles;
};
/// A smooth curve through the first and the last point, near the others by `fairness.miss` at most, and no further off
/// them than they scatter: it is smoothed as far as the points tell of each other best (cross-validation), so that
/// points which lie on a smooth curve are not smoothed at all. What it bends least away from is the best circle, the
/// best ellipse, or a cubic along its own length or over the string between its ends, whichever tells most. Its ends are
/// free unless angles are given. Where that is sharper than the least radius it is smoothed until it keeps it, whatever
/// the misses then are; where the end angles leave no such curve, not at all. At least three points, no two the same.
FairFit fit_fair(const std::vector<Point>& points, const Fairness& fairness);

/// A circle is refused where a point misses it by more than this; an ellipse is not recommended.
inline constexpr Length most_miss = Length::inches(1.0 / 8);

struct Survey {
    std::vector<Point> points;     ///< as measured, in the frame of the head or the course
    std::vector<Length> stations;  ///< as the job gives them
    std::vector<Length> heights;
    std::optional<CircleFit> circle;
    std::optional<EllipseFit> ellipse;
    FairFit fair;
    job::Fit used = job::Fit::fair;
    job::Fit recommended = job::Fit::fair;
    /// The one point that all others contradict, likely a slip of the tape or the pencil, and by how much.
    struct Suspect {
        std::size_t point = 0;
        Length off;  ///< from a fair curve through the others, outward positive
    };
    std::optional<Suspect> suspect;
    Length tape = job::usual_tape;  ///< what a point may be off

    /// Two neighbouring points between which the fair curve is more guess than measure: it turns by more than 25
    /// degrees there, or one of them lies, by `FairFit::left_out`, three times the tape's accuracy off what the others
    /// alone would give. Common practice, no source: of all heads of this program, measured every 6 in, those come
    /// back within 1/32 in that have no such gap.
    struct Gap {
        std::size_t after = 0;  ///< the point before it; the next one stands behind it
        Angle turn;             ///< of the curve within
    };
    std::vector<Gap> gaps;

    /// Of the fit that is used.
    const Misses& used_misses() const;
};

/// A miss without its sign and without what is finer than a tape tells.
Length to_hundredths(Length miss);

/// `points` are the job's ordinates in the frame of the head or the course. `used` is the job's choice or, where it
/// makes none, fair.
Survey survey(const std::vector<Point>& points, const job::Ordinates& ordinates, Length least_radius);

}  // namespace kerfpacket::curve
