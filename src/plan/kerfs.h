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
    /// As in Cut, from here on.
    void allow_for(double tighter) { tighter_ = tighter; }
    /// The same however sharp the bend.
    bool alike() const { return least_ == most_; }
    Length most() const { return most_; }
    /// Signed, 1/mm.
    Length at(double curvature);

private:
    Length least_, most_;
    double tighter_;
    bend::SpacingSearch inside_, outside_;
};

/// On a varying curve: n(l) is the integral of dl over the spacing that the radius at l allows, and kerf i stands where
/// n is i - 1/2; neighbouring gaps differ by at most `most_gap_ratio`. Source: src/bend/NOTES.md.
std::vector<Length> solved_places(const Blank& blank, const Unrolled& board, const Cutting& cutting,
                                  SpacingByBend& allowed);

/// How sharply a line bends at evenly spaced places, the first and the last included.
struct Bends {
    Length step;
    std::vector<double> curvatures;  ///< signed, 1/mm
};
/// Between two distances along it.
Bends bends_along(const curve::Curve& line, Length from, Length to);

/// Spacing by the radius at those places, never more than the tightest radius within a quarter inch allows, rising and
/// falling so gently that neighbouring gaps keep to the ratio.
std::vector<Length> local_spacings(SpacingByBend& allowed, const Bends& bends);

}  // namespace kerfpacket::plan
