#pragma once
// The parts of a strip outside the bend: trim, tails, the two ends of the blank.

#include <algorithm>
#include <array>

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

/// What a kerf takes on either side of its mark: half of three bold figures at the largest size.
inline constexpr Length beside_kerf = Length::points(17);

/// The wood that goes away: from zero to here, and from here to the far end. It begins beyond a mitre.
Length waste_until(const plan::Piece& piece);
Length waste_from(const plan::Piece& piece);

/// Whether the plain face is the shorter one at an end that has a mitre; else it is the longer one.
bool plain_face_shorter(const plan::Piece& piece, std::size_t end);
/// "MITRE 35.6°, plain face shorter": what an end's cut is, for a piece that has one there.
std::string mitre_words(const plan::Piece& piece, std::size_t end, const Kit& kit);
/// The same in short: "MITRE 35.6°".
std::string mitre_words_short(const plan::Piece& piece, std::size_t end, const Kit& kit);
/// Whether an end is cut to meet the next blank of its board.
bool is_scarf(const plan::Piece& piece, std::size_t end);
/// Whether the bend goes on there in the next blank.
bool bends_past(const plan::Piece& piece, std::size_t end);
/// Where the heavy line stands that the bend starts or ends at: at a mitre the cut on the kerf face.
Length bend_line(const plan::Piece& piece, std::size_t end);
/// A line across the strip at a distance from zero; in the words lane alone where a kerf is near.
void draw_across(Pen& pen, const StripContext& context, const StripFrame& frame, Role role, Length from_zero,
                 Length width, Dash dash = Dash::solid);

/// What stands in the hatch of an end on a strip: where it is too narrow for them, words stand beside the cut's line.
struct WasteWords {
    bool trim = false;
    bool mitre = false;
};
/// Trim hatched with its words, the heavy line at either end of the blank, and how long a tail is.
std::array<WasteWords, 2> draw_strip_ends(Pen& pen, const StripContext& context, const Strip& strip,
                                          const StripFrame& frame);

}  // namespace kerfpacket::sheets
