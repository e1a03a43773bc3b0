#pragma once
// Makes the lines that the templates of a piece draw.

#include "curve/shape.h"
#include "plan/request.h"

namespace kerfpacket::plan {

/// The parallel of a head's arch, without its legs, at a distance to the left of the measured curve.
Path arch_parallel(const curve::Head& head, Length left);

/// Uprights of all lines that are there, from their corners down to an inch below the lowest spring or corner.
void add_leg_lines(ArchLines& lines);

/// Straight boards for the legs, where the liner is to run through but meets them at a corner, and where it splays.
std::vector<LegBoard> leg_boards(const curve::Head& head, const job::Opening& opening);

/// Lines of wall and liner, without casing, uprights and kerf ticks. The parallels must not fold.
ArchLines arch_lines(const curve::Head& head, const job::Opening& opening);

/// A tick for every kerf of the board, added to the lines of its opening.
void add_kerf_ticks(ArchLines& lines, const Piece& piece, const Request& board);

WallLines wall_lines(const Request& board);

/// The rib that holds the board, as FormRib says.
/// Stations must lie on the chord.
FormRib form_rib(const Piece& piece, const Request& board, const job::Form& form, measure::Unit units);
/// That a board is let go only where its springing back is known, at the place that says so.
job::Diagnostics check_freed(const Piece& piece, const job::Form& form);
/// Stations that lie beyond the form.
job::Diagnostics check_stations(const FormRib& rib, const job::Form& form, const job::Job& job);

}  // namespace kerfpacket::plan
