#pragma once
// Where the kerfs of a board stand, what each of them turns, and whether each of them holds.

#include <algorithm>

#include "curve/curve.h"
#include "plan/plan.h"

namespace kerfpacket::plan {

/// A board unrolled: the line that keeps its length, which the blank's length is measured along.
struct Unrolled {
    curve::Curve measured;  ///< the measured curve from the first of the bend's wood to its last, mitres included
    Length starts_at;       ///< of its start, along the curve that the job gives
    Length left;            ///< of the length-keeping line from the measured curve
    curve::Curve line;      ///< the length-keeping line
    Length origin;          ///< from the blank's left end to the line's start
    Length below_face;      ///< of the line, from the plain face
    Length bend_from;       ///< along the line: where the plain face, which bends, begins and ends
    Length bend_to;

    Length from_left(Length along) const { return origin + along; }
    /// Along the curve that the job gives, of a place along the line; beyond the line's ends the board is straight.
    Length on_curve(Length along) const {
        const Length inside = std::clamp(along, Length(), line.length());
        return starts_at + measured.from_parallel(inside, left) + (along - inside);
    }
};

/// Least and largest spacing that is looked for. Common practice, no source: one kerf every half inch, a quarter inch
/// for very tight bends.
inline constexpr Length usual_spacing = Length::inches(0.5);
inline constexpr Length tight_spacing = Length::inches(0.25);

/// How deep a board is cut and where its kerfs go.
struct Cut {
    enum class Kerfs {
        even,     ///< at whole multiples of the spacing from zero
        by_hand,  ///< where the job file puts them
        solved,   ///< as the radius allows
    };
    Length depth;
    Kerfs kerfs = Kerfs::solved;
    Length most = usual_spacing;   ///< the spacing, or the largest that is looked for
    Length least = tight_spacing;  ///< the smallest that is looked for
    double tighter = 0;            ///< the part of the radius by which the spacing allows for a tighter bend
};

/// Kerfs at whole multiples of the spacing from zero, as one would with a tape, until every point of the bend lies
/// within half a spacing of one, clear of the mitres.
void set_even_kerfs(Piece& piece);

/// Kerfs where the job file puts them.
void set_given_kerfs(Piece& piece, const std::vector<job::Sourced<Length>>& places);

/// How many kerfs an arc takes at no more than the piece's spacing, and what the spacing is then: bend length / N.
struct ArcKerfs {
    int count = 0;
    Length spacing;
};
ArcKerfs arc_kerfs(const Piece& piece, const Unrolled& board);
/// That many, evenly, the first and the last half a gap inside the tangent points.
void set_arc_kerfs(Piece& piece, const Unrolled& board, int count);

/// Kerfs on a varying curve: n(l) is the integral of dl over the spacing that the radius at l allows, and kerf i stands
/// where n is i - 1/2; neighbouring gaps differ by at most 1.25. Source: src/bend/NOTES.md.
void set_solved_kerfs(Piece& piece, const Unrolled& board, const bend::Material& material, const Cut& cut);

/// Spacing by the radius at evenly spaced places between two distances along the line, the first and the last included,
/// never more than the tightest radius within a quarter inch allows, rising and falling so gently that neighbouring
/// gaps keep to the ratio.
std::vector<Length> local_spacings(const Piece& piece, const curve::Curve& line, Length from, Length to,
                                   const bend::Material& material, const Cut& cut);

/// Judges every kerf by its own radius and gaps; the piece gets the assessment of the one that governs.
void assess_kerfs(Piece& piece, const Unrolled& board, const bend::Material& material);

/// More kerfs than anybody would cut by hand in one board: a slip in a unit.
inline constexpr std::size_t most_kerfs = 5000;

}  // namespace kerfpacket::plan
