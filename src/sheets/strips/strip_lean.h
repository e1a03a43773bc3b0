#pragma once
// What stands askew on the strip of a board that climbs: its kerfs, and the cuts that do not run along them.

#include <cstddef>
#include <optional>
#include <vector>

#include "sheets/strips/strip_ends.h"

namespace kerfpacket::sheets {

/// How much further to the right a place of the board stands for every length that it is further from the front edge
/// than a place at the same distance from zero there: the kerfs of a board that climbs stand askew on its face, its own
/// ends square, and between them one goes over into the other. 0 of a level board, and over the edge of any.
class StripLean {
public:
    StripLean(const StripContext& context, const StripFrame& frame);

    bool none() const { return lean_ == 0; }
    /// A place of a strip that is drawn as if all stood square.
    Point operator()(Point drawn) const;
    /// Where a place is drawn that stands here when all of it leans.
    Point before(Point leant) const;
    /// By how much words at that height that lean with the kerfs come closer to those that stand here, in the direction
    /// in which they lean: to the left below 0.
    Length closing_on(Point drawn) const { return (drawn.y - frame_.base()) * (lean_ - at(frame_.from_zero(drawn.x))); }
    /// How far the strip's upper edge stands out beyond its lower one, to the left or to the right: at most.
    static Length overhang(const plan::Piece& piece, const Lanes& lanes);
    /// Whether it stands out to the left.
    static bool to_the_left(const plan::Piece& piece);

private:
    double at(Length from_zero) const;

    const plan::Piece& piece_;
    const plan::Blank& blank_;
    const StripFrame& frame_;
    Length beside_;  ///< of a kerf's middle, what its mark takes
    double lean_ = 0;
};

/// Of a board that climbs, a cut that does not run along its kerfs.
struct OtherCut {
    Length foot;       ///< from zero, on the front edge
    double slope = 0;  ///< how much further from zero for every length further from that edge
    Length up;         ///< how far up it is drawn

    Length at(Length height) const { return foot + height * slope; }
};
/// None where an end is cut along the kerfs, or where the strip goes over the edge.
std::optional<OtherCut> other_cut(const StripContext& context, std::size_t end);
/// Where it crosses a height of the strip, drawn as if all stood square.
Length crossing(const OtherCut& cut, Length height, const StripFrame& frame, const StripLean& lean);
/// Where these cuts cross a line of words: across the page, place by place.
std::vector<Length> other_cuts_across(const StripContext& context, const Strip& strip, const StripFrame& frame,
                                      Length up, Length size);
/// These cuts, each at its own slope, as far as they are on the strip; open at the words and numerals that were put on
/// the page since it had so many items.
void draw_other_cuts(Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame,
                     const StripLean& lean, std::size_t first);

}  // namespace kerfpacket::sheets
