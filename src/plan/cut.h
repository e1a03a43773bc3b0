#pragma once
// How a board is cut: what is asked for, and what it came to.

#include <vector>

#include "bend/cell.h"
#include "job/job.h"

namespace kerfpacket::plan {

using measure::Length;

/// Least and largest spacing that is looked for. Common practice, no source: one kerf every half inch, a quarter inch
/// for very tight bends.
inline constexpr Length usual_spacing = Length::inches(0.5);
inline constexpr Length tight_spacing = Length::inches(0.25);

/// Gaps beside a kerf that differ by more are a weak link. Judgement: src/bend/NOTES.md, "Kerfs along a bend".
inline constexpr double most_gap_ratio = 1.25;

/// More kerfs than anybody would cut by hand in one board: a slip in a unit.
inline constexpr std::size_t most_kerfs = 5000;

/// Common practice, no source: half the thickness deep, of a moulded board where it is thinnest.
Length usual_depth(const job::Board& board);

/// The plies of the board, made to add up to its thickness.
std::vector<Length> plies_of(const job::Board& board);

/// The profile of a moulded board. Where only its least thickness is told, half of the width is taken to be that thin
/// and half as thick as the board: judgement, src/bend/NOTES.md, "Moulded boards".
std::vector<bend::ProfilePoint> profile_of(const job::Board& board);

/// How deep a board is to be cut and where its kerfs are to go.
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

/// The cut of a board: alike all along but for the spacing.
struct Cutting {
    Length thickness;
    Length depth;  ///< of the kerfs
    Length kerf;
    Length spacing;                             ///< the largest gap between kerfs
    Length least_spacing;                       ///< the smallest; the same where the spacing is even
    double hinge_part = 0.5;                    ///< as in bend::Cell
    std::vector<Length> plies;                  ///< the same
    std::vector<bend::ProfilePoint> profile{};  ///< the same
    bool profile_told = true;                   ///< not only its least thickness
    bool depth_given = false;
    bool spacing_given = false;  ///< a spacing, or the kerfs one by one
    bool kerfs_given = false;

    bool even() const { return spacing == least_spacing; }
    bool moulded() const { return !profile.empty(); }
    Length web() const { return thickness - depth; }  ///< of a moulded board at its thickest place
    Length thinnest() const { return cell(spacing).thinnest(); }
    Length thinnest_web() const { return thinnest() - depth; }
    bend::Cell cell(Length gap) const { return {thickness, depth, kerf, gap, hinge_part, plies, profile}; }
};

/// Which edge of a wall board is thinner than the board is thickest; `untold` where only the least thickness is known,
/// or where neither edge is.
enum class MouldedEdge { none, top, bottom, both, untold };
MouldedEdge moulded_edge(const Cutting& cut);

}  // namespace kerfpacket::plan
