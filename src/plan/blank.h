#pragma once
// The straight board that is cut and bent: its ends, its bend and its kerfs, counted from its own zero.

#include <algorithm>
#include <array>
#include <optional>
#include <vector>

#include "bend/cell.h"
#include "geom/path.h"
#include "job/job.h"

namespace kerfpacket::plan {

using measure::Angle;
using measure::Length;

struct Kerf {
    int n = 0;                                  ///< from 1, counted from the zero end
    Length at;                                  ///< middle of the kerf, from zero
    Length mark;                                ///< where the tick stands: blade centre, left or right as the job says
    Length on_curve;                            ///< along the measured curve of its board, from the left
    Length spacing;                             ///< mean of the gaps beside it: the length of blank that it bends
    Angle turn;                                 ///< its share of the bend; below 0 where a ripple turns it back
    bend::KerfsOn on = bend::KerfsOn::outside;  ///< the side of the bend here
    Length radius;                              ///< of the length-keeping line here; 0 where it is straight
    double utilisation = 0;                     ///< strain here over break strain
};

/// How a board ends.
struct BoardEnd {
    enum class Meets { nothing, leg, board, blank };  ///< `blank`: another of the same board, at a scarf
    Meets meets = Meets::nothing;
    Angle mitre;        ///< of the cut, from square through the board; 0 for a square end
    Length kerf_face;   ///< from zero: where the cut meets the kerf face
    Length plain_face;  ///< from zero, carried square up to the kerf face: where it meets the plain face
    /// How much further from zero the cut meets the other long edge than the front edge: 0 for one square across.
    Length lean{};
};

/// A part of a board, or of a curve, that bends one way.
struct BendRun {
    Length from;
    Length to;
    bend::KerfsOn on = bend::KerfsOn::outside;
};

/// All lengths are counted from zero; the first of a pair is at the zero end.
struct Blank {
    job::End zero = job::End::left;
    Length length;
    std::array<Length, 2> trims;  ///< extra length, sawn off once the board is bent
    std::array<Length, 2> tails;  ///< straight
    std::array<BoardEnd, 2> ends;
    Length bend_start;
    Length bend_end;
    std::vector<BendRun> runs;  ///< from end to end of the bend
    Length finish_length;       ///< along the seen face, bend and tails, without trim; not told of a part of a board
    /// Along the measured curve, from the left, tails included, trim not; not told of a part of a board.
    std::array<Length, 2> covers;
    std::vector<Kerf> kerfs{};
    /// The same of kerfs as of ends: not 0 on a board that climbs. All places of such a board are those on its front
    /// edge, and `trims` reach up to the cuts there.
    Length lean{};
    /// Of a splayed board: length and height of the least level rectangle that it lies in flat, its middle level; as a
    /// tape reads them, not less.
    std::optional<geom::Point> box{};

    Length bend_length() const { return bend_end - bend_start; }
    Length centre() const { return (bend_start + bend_end) / 2; }
    const BoardEnd& end(job::End side) const { return ends.at(zero == side ? 0 : 1); }
    /// From zero: where the cut of an end meets the kerf face. A square one stands beyond the tail, at the trim.
    Length cut_at(std::size_t i) const {
        if (ends.at(i).mitre.radians() != 0) return ends.at(i).kerf_face;
        return i == 0 ? trims[0] : length - trims[1];
    }
    /// Of a board that climbs, along it, between the outermost tips of its ends as they are cut.
    Length tip_to_tip() const {
        const Length low = cut_at(0), high = cut_at(1);
        return std::max(high, high + ends[1].lean) - std::min(low, low + ends[0].lean);
    }
    /// Whether it is one of several that a board is made of.
    bool is_part() const { return ends[0].meets == BoardEnd::Meets::blank || ends[1].meets == BoardEnd::Meets::blank; }
    bool bends_both_ways() const { return runs.size() > 1; }
    std::vector<Length> reverses() const;  ///< where the bend changes sides
    /// How much the gaps beside a kerf that stands between two others differ: the larger over the smaller.
    double gap_ratio(std::size_t i) const;
    /// A place that is counted from zero, from the left end; and one that is counted from the left, from zero.
    Length from_left(Length at) const { return zero == job::End::right ? length - at : at; }
};

/// Where two blanks of one board meet.
struct Joint {
    Length at;     ///< middle of the scarf, from zero of the whole board
    Length scarf;  ///< its length along the board
    Angle angle;   ///< of its cuts, from square through the board
    bool in_bend = false;
    int gone = 0;  ///< kerfs that it leaves no room for
    Length off;    ///< how far the flat between its neighbouring kerfs stands off the curve

    Length from() const { return at - scarf / 2; }
    Length to() const { return at + scarf / 2; }
};

}  // namespace kerfpacket::plan
