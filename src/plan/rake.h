#pragma once
// A board that climbs along its wall at one slope: what a plan of the wall does not tell of it. The wall is a cylinder
// over its plan curve, whose straight lines are plumb; unrolled it lies flat, and plumb lines stay parallel on it,
// askew to a board that climbs.

#include <array>
#include <cmath>

#include "job/job.h"
#include "plan/blank.h"

namespace kerfpacket::plan {

struct Rake {
    bool to_the_right = true;           ///< it climbs so, as seen from the room
    std::array<job::EndCut, 2> ends{};  ///< left, right, as it hangs
    Length climb;                       ///< over the whole wall, straight ends included
    Length plan_length;                 ///< of the line that keeps its length, level, straight ends included
    Length width;                       ///< of the board, square across
    bool grain = false;                 ///< runs along the board, so that the bend crosses it at the kerfs' angle

    /// Of one of the blanks that the board is made of, the i-th from zero: at a joint it is cut along its kerfs.
    Rake of_part(std::size_t i, std::size_t parts, job::End zero) const;

    /// Of the kerfs from square across the board: its tangent is the slope on the line that keeps its length, not the
    /// slope on the wall.
    Angle kerf() const;
    double cosine() const { return std::cos(kerf().radians()); }
    /// How much further along the board a plumb line meets one edge than the other.
    Length lean() const { return width * std::tan(kerf().radians()); }
    /// Of the cut of an end from square across the board: a plumb one runs along the kerfs, a level one square to them.
    Angle end(job::EndCut cut) const;
    /// From one end to the other along an edge, both cut plumb.
    Length along() const { return plan_length / cosine(); }
    /// Of a kerf from edge to edge; plumb, the height of the board.
    Length cut() const { return width / cosine(); }
    /// Of a level line through the board.
    Length level() const { return width / std::sin(kerf().radians()); }
    /// Between two places along an edge, of what is told square to the kerfs.
    Length along_edge(Length square) const { return square / cosine(); }
};

/// `steepness`: rise over run along the wall, whose curve and straight ends measure `measured`.
Rake rake_of(const job::Rake& asked, Length width, Length measured, Length plan_length);

/// A blank that is laid out square to its kerfs, its trims told so too, as it lies askew on the board: every place is
/// where it meets the front edge, which is the top edge as the board hangs, counted along it from the square end of the
/// board. The board is so long that each kerf lies on it whole.
Blank askew(Blank blank, const Rake& rake);

}  // namespace kerfpacket::plan
