#pragma once
// A board unrolled: the flat blank that bends onto its curve, counted from the left.

#include <algorithm>

#include "plan/request.h"

namespace kerfpacket::plan {

/// All places are counted, level, from the blank's left end, as seen from the room.
struct Unrolled {
    curve::Curve measured;  ///< the measured curve from the first of the bend's wood to its last, mitres included
    Length starts_at;       ///< of its start, along the curve that the job gives
    Length left;            ///< of the length-keeping line from the measured curve
    curve::Curve line;      ///< the length-keeping line, which the blank's length is measured along
    Length origin;          ///< of the line's start
    Length below_face;      ///< of the line, from the plain face
    Length bend_from;       ///< along the line: where the plain face, which bends, begins and ends
    Length bend_to;
    Length length;                 ///< of the blank
    std::array<Length, 2> trims;   ///< left, right
    std::array<BoardEnd, 2> ends;  ///< left, right
    std::array<Length, 2> tails;   ///< the same
    Angle turn;                    ///< of both ways added
    Length finish_length;          ///< as in Blank
    std::array<Length, 2> covers;  ///< the same
    std::vector<BendRun> runs{};   ///< left to right
    std::optional<Rake> rake{};    ///< of a board that climbs: all else is told square to its kerfs, `trims` too

    Length from_left(Length along) const { return origin + along; }
    Length bend_end() const { return from_left(line.length()); }
    /// Along the curve that the job gives, of a place along the line; beyond the line's ends the board is straight.
    Length on_curve(Length along) const {
        const Length inside = std::clamp(along, Length(), line.length());
        return starts_at + measured.from_parallel(inside, left) + (along - inside);
    }
};

/// The blank, which bends about a line that keeps its length, so far below its plain face.
Unrolled unroll(const Request& wanted, Length below_face);

/// The same blank counted from zero, without its kerfs.
Blank counted_from_zero(const Unrolled& board, job::End zero);

}  // namespace kerfpacket::plan
