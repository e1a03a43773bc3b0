#pragma once
// The parts of a strip outside the bend: trim, tails, the two ends of the blank.

#include <algorithm>
#include <array>
#include <optional>
#include <string>
#include <utility>
#include <vector>

#include "sheets/strips/strip_drawing.h"

namespace kerfpacket::sheets {

/// Where a strip lies on the page: distances from zero become points.
class StripFrame {
public:
    StripFrame(Point start, const Strip& strip, const plan::Piece& piece)
        : start_(start),
          from_(strip.from),
          length_(strip.to - strip.from),
          runs_right_(piece.blank().zero == job::End::left) {}

    bool runs_right() const { return runs_right_; }
    Length base() const { return start_.y; }
    Length left() const { return runs_right_ ? start_.x : start_.x - length_; }
    Length right() const { return left() + length_; }
    Point at(Length from_zero, Length up) const {
        const Length along = from_zero - from_;
        return {runs_right_ ? start_.x + along : start_.x - along, start_.y + up};
    }
    Length from_zero(Length x) const { return from_ + (runs_right_ ? x - start_.x : start_.x - x); }
    /// The part of the strip between two distances from zero.
    Rect zone(Length from, Length to, Length height) const {
        const Point a = at(from, {});
        const Point b = at(to, height);
        return {{std::min(a.x, b.x), a.y}, {std::max(a.x, b.x), b.y}};
    }

private:
    Point start_;
    Length from_;
    Length length_;
    bool runs_right_;
};

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

/// The wood that goes away: from zero to here, and from here to the far end. It begins beyond a mitre.
Length waste_until(const plan::Piece& piece);
Length waste_from(const plan::Piece& piece);

/// Whether the plain face is the shorter one at an end that has a mitre; else it is the longer one.
bool plain_face_shorter(const plan::Piece& piece, std::size_t end);
/// "MITER 35.6°, plain face shorter": what an end's cut is, for a piece that has one there.
std::string mitre_words(const plan::Piece& piece, std::size_t end, const Kit& kit);
/// The same in short: "MITER 35.6°".
std::string mitre_words_short(const plan::Piece& piece, std::size_t end, const Kit& kit);
/// What is sawn off an end, and the same in short: "TRIM 3 in: cut off after fitting"; of a board that climbs how the
/// end is cut, and where on the front edge.
std::pair<std::string, std::string> sawn_words(const plan::Piece& piece, std::size_t end, const Tape& tape,
                                               const Kit& kit);
/// Whether an end is cut to meet the next blank of its board.
bool is_scarf(const plan::Piece& piece, std::size_t end);
/// Whether the bend goes on there in the next blank.
bool bends_past(const plan::Piece& piece, std::size_t end);
/// Where the heavy line stands that the bend starts or ends at: at a mitre the cut on the kerf face.
Length bend_line(const plan::Piece& piece, std::size_t end);
/// A line across the strip at a distance from zero, open where marks stand and are measured.
void draw_across(Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame, Role role,
                 Length from_zero, Length width, Dash dash = Dash::solid);

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
/// These cuts, each at its own slope, as far as they are on the strip; open at the words and numerals that were put on
/// the page since it had so many items.
void draw_other_cuts(Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame,
                     std::size_t first);

/// The name of a joint to the strip before or the next, beside its half diamond.
struct JointName {
    std::string text;
    Type type{};
    Point anchor{};
    Rect taken{};  ///< with the half diamond, and what other words keep off
};
JointName joint_name(const Pen& pen, const StripContext& context, const Strip& strip, const StripFrame& frame,
                     bool at_start);

/// What was said beyond an end of the bend: the rest stands beside its line in the words lane.
struct EndWords {
    bool zero = false;  ///< "ZERO END"
    bool hook = false;  ///< where the tape is hooked
    bool trim = false;
    bool mitre = false;
    std::vector<Rect> in_lane{};  ///< where some of it stands in the words lane

    void take_lane_of(const std::vector<Rect>& words) { in_lane.insert(in_lane.end(), words.begin(), words.end()); }
};
/// Trim hatched with its words, the cuts, the heavy line at either end of the blank, and how long a tail is.
std::array<EndWords, 2> draw_strip_ends(Pen& pen, const StripContext& context, const Strip& strip,
                                        const StripFrame& frame);

}  // namespace kerfpacket::sheets
