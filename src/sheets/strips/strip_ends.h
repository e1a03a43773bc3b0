#pragma once
// The parts of a strip outside the bend: trim, tails, the two ends of the blank.

#include <algorithm>
#include <array>
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
