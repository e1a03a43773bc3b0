#pragma once
// At which heights a strip's parts stand. All are above its lower edge: the board's front edge for a strip on the face,
// the board's plain face for one over the edge. At the saw the board lies kerf face up and its front edge toward the
// operator: there an edge strip reads upright, slots open at the top, and its flap, folded back, reads upright from
// above.

#include "measure/length.h"
#include "plan/piece.h"

namespace kerfpacket::sheets {

using measure::Length;

/// What stands in the hatch and beyond the bend.
struct EndLanes {
    Length trim;
    Length zero;  ///< the large 0
    Length zero_words;
    Length hook;
    Length zero_mitre;
    Length far_trim;
    Length far_words;
    Length from_zero;
    Length tail;
};

struct Lanes {
    bool edge = false;
    Length height;    ///< of the whole strip
    Length mark;      ///< where feet and ticks start: the front edge, or the fold
    Length cut;       ///< where an edge strip's slots end; the web is below
    Length tick_top;  ///< above `mark`; nothing else stands beside it down to the foot
    Length numeral;   ///< baselines: in one row, of odd and of even numbers in two
    Length odd;
    Length even;
    Length running;  ///< baseline of the distances from zero, beside one row of numerals and beside two
    Length running_two_rows;
    Length words;    ///< baseline of the words lane
    Length pointer;  ///< length of a tape mark's line, down from the top
    EndLanes ends;
    bool two_rows = true;  ///< whether there is room for them

    Length words_middle() const { return words + Length::points(3.5); }
    /// How far up a line starts that keeps to the words lane: above numerals and running distances.
    Length above_numerals() const { return edge ? mark + Length::points(7.5) : words - Length::points(4.5); }
};

inline constexpr Length foot_height = Length::points(3);

/// A face strip of the layout system's height, or drawn together to as little as plan::least_face_strip.
Lanes face_lanes(Length height);
/// A strip over the edge of this piece's board.
Lanes edge_lanes(const plan::Piece& piece);

}  // namespace kerfpacket::sheets
