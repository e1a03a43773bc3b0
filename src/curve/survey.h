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
};

/// Geometric least squares (the sum of squared distances square to the circle is least): Gander, Golub, Strebel, BIT 34
/// (1994) 558-578. At least three points that are not in line; none otherwise, or where no circle is best.
std::optional<CircleFit> fit_circle(const std::vector<Point>& points);
/// Geometric least squares; at least five points. None where no ellipse fits better than a line or a parabola would.
std::optional<EllipseFit> fit_ellipse(const std::vector<Point>& points);

/// What a hand tape tells on a wall.
inline constexpr Length tape_accuracy = Length::inches(1.0 / 16);

/// What a fair curve has to keep to.
struct Fairness {
    Length miss = tape_accuracy;  ///< of every point, at most, unless the radius asks for more
    Length least_radius;          ///< nowhere sharper; 0 for no limit
    std::optional<std::array<Angle, 2>> end_angles;
};
/// Cubic smoothing spline along the chain of chords, through the first and the last point: of all whose points miss by
/// no more than `fairness.miss` the smoothest, that is the one that bends least away from the cubic which fits the
/// points best (to bend least of all would flatten an arc). Where that is sharper than the least radius it is smoothed
/// until it keeps it, whatever the misses then are; where the end angles leave no such curve, not at all. Without end
/// angles it bends at its ends as that cubic does. At least three points, no two the same.
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

    /// Of the fit that is used.
    const Misses& used_misses() const;
};

/// `points` are the job's ordinates in the frame of the head or the course. `used` is the job's choice or, where it
/// makes none, fair.
Survey survey(const std::vector<Point>& points, const job::Ordinates& ordinates, Length least_radius);

}  // namespace kerfpacket::curve
