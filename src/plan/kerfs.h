#pragma once
// Where the kerfs of a board stand: middles, from zero, in order.

#include "bend/spacing.h"
#include "plan/cut.h"
#include "plan/unroll.h"

namespace kerfpacket::plan {

/// At whole multiples of the spacing from zero, as one would with a tape, until every point of the bend lies within
/// half a spacing of one, clear of the mitres.
std::vector<Length> even_places(const Blank& blank, const Cutting& cut);

/// How many kerfs an arc takes at no more than the cut's spacing, and what the spacing is then: bend length / N.
struct ArcKerfs {
    int count = 0;
    Length spacing;
};
ArcKerfs arc_kerfs(const Blank& blank, const Unrolled& board, const Cutting& cut);
/// That many, evenly, the first and the last half a gap inside the tangent points.
std::vector<Length> arc_places(const Blank& blank, const Unrolled& board, const Cutting& cut, int count);
/// From one to the next of them.
Length arc_gap(const Blank& blank, const Unrolled& board, const Cutting& cut, int count);

/// How far apart the kerfs of a cut may stand by how sharply its board is bent; what is found out is kept.
class SpacingByBend {
public:
    SpacingByBend(const Cutting& cutting, const bend::Material& material, const Cut& cut);
    /// The same however sharp the bend.
    bool alike() const { return cut_.least == cut_.most; }
    Length most() const { return cut_.most; }
    /// Signed, 1/mm.
    Length at(double curvature);

private:
    const Cut& cut_;
    bend::SpacingSearch inside_, outside_;
};

/// On a varying curve: n(l) is the integral of dl over the spacing that the radius at l allows, and kerf i stands where
/// n is i - 1/2; neighbouring gaps differ by at most `most_gap_ratio`. Source: src/bend/NOTES.md.
std::vector<Length> solved_places(const Blank& blank, const Unrolled& board, const Cutting& cutting,
                                  SpacingByBend& allowed);

/// At evenly spaced places.
struct LocalSpacings {
    std::vector<Length> spacings;
    std::vector<double> curvatures;  ///< signed, 1/mm; none where all spacings are alike
};
/// Spacing by the radius at evenly spaced places between two distances along the line, the first and the last included,
/// never more than the tightest radius within a quarter inch allows, rising and falling so gently that neighbouring
/// gaps keep to the ratio.
LocalSpacings local_spacings(SpacingByBend& allowed, const curve::Curve& line, Length from, Length to);

}  // namespace kerfpacket::plan
