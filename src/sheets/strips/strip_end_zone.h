#pragma once
// Words on a strip beyond an end of its bend: each line where nothing stands, from the outer end inward.

#include <string>
#include <vector>

#include "sheets/layout/pen.h"
#include "sheets/strips/strip_lanes.h"

namespace kerfpacket::sheets {

class EndZone {
public:
    struct Line {
        Length up;  ///< baseline above the strip's lower edge
        std::string text;
        Type type;
        std::string shorter = {};  ///< instead, where the text is too long
        Length under = {};         ///< kept free of words above it, for what of them hangs below their line
        std::string next = {};     ///< a second row under it
    };

    /// A part of a strip whose outer end is on the left or on the right. Lines keep off what is `taken`, and add
    /// themselves to it.
    EndZone(Pen& pen, const Rect& whole, bool from_left, const Lanes& lanes, Length apart, std::vector<Rect>& taken)
        : pen_(pen), whole_(whole), from_left_(from_left), lanes_(lanes), apart_(apart), taken_(taken) {}

    /// Sets a line, condensed or shortened where need be. One that is still too long is left out, never clipped, and
    /// the answer is false.
    bool set(const Line& line);
    /// The same at the height nearest to its own that has room for it.
    bool set_anywhere(const Line& line);
    /// At any height that leaves the words lane free.
    bool set_below_lane(const Line& line);
    /// The same, or else in two rows.
    bool set_in_rows(const Line& line);
    /// Where its lines stand in the words lane.
    const std::vector<Rect>& in_lane() const { return in_lane_; }

private:
    bool set_as(const Line& line, const std::string& text, Face face);
    /// Baselines under `below` at which words of that size cross no line of the strip.
    std::vector<Length> heights(const Line& line, Length below) const;
    bool set_at_one_of(std::vector<Length> heights, const Line& line);
    bool fits_between_lines(const Line& line, Length up) const;

    Pen& pen_;
    Rect whole_;
    bool from_left_;
    const Lanes& lanes_;
    Length apart_;  ///< from a line to what else stands beside it
    std::vector<Rect>& taken_;
    std::vector<Rect> in_lane_;
};

}  // namespace kerfpacket::sheets
