#pragma once
// The lines of a piece that a template draws: arches in elevation, walls in plan.

#include "curve/curve.h"
#include "plan/plan.h"

namespace kerfpacket::plan {

/// `measured` is the curve the job gives; the piece must be complete but for its lines.
ArchLines arch_lines(const Piece& piece, const curve::Curve& measured, const job::Opening& opening);

/// `tails` left, right, as seen from the room.
WallLines wall_lines(const Piece& piece, const curve::Curve& measured, std::array<Length, 2> tails);

}  // namespace kerfpacket::plan
