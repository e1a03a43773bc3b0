#pragma once
// Runs of curve that meet at corners, and the lines parallel to the whole: at a corner the parallels meet on the mitre.

#include <optional>
#include <vector>

#include <tl/expected.hpp>

#include "curve/curve.h"

namespace kerfpacket::curve {

/// A parallel that cannot be drawn: at this place of the outline the radius is smaller than the distance, or a run is
/// used up between its corners.
struct Fold {
    Point where;      ///< on the outline
    Length radius;    ///< there; 0 where a run is used up
    Length distance;  ///< of the parallel
};

/// The part of a run that belongs to a parallel, as distances along the run itself (not along the parallel). They lie
/// beyond the run's ends where the parallel reaches further.
struct Extent {
    Length from;
    Length to;
};

/// A chain of runs, each starting where the one before ends. Two may meet smoothly or at a corner.
class Outline {
public:
    explicit Outline(std::vector<Curve> runs) : runs_(std::move(runs)) {}

    const std::vector<Curve>& runs() const { return runs_; }
    /// Signed turn at the corner between run i and run i + 1.
    Angle corner(std::size_t i) const;
    /// Whether the runs meet at a corner: turns of less than 0.01 degrees count as smooth.
    bool has_corner(std::size_t i) const;

    /// For each run its extent on the parallel at this distance to the left, or where that folds.
    tl::expected<std::vector<Extent>, Fold> extents(Length left) const;
    /// The parallel as lines and arcs, one path a run, each starting where the one before ends. Must not fold.
    std::vector<Path> parallel(Length left) const;

private:
    std::vector<Curve> runs_;
};

}  // namespace kerfpacket::curve
