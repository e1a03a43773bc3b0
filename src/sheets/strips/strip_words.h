#pragma once
// The words beside the marks of a strip: where each stands, so that all find room in the words lane.

#include <functional>
#include <string>
#include <vector>

#include "sheets/layout/lane.h"
#include "sheets/layout/pen.h"
#include "sheets/strips/strip_lanes.h"

namespace kerfpacket::sheets {

/// The one order of importance of a strip's words: how much worse the strip is without them, where not all find room.
enum class Worth { plain_face = 60, centre = 500, bend = 2000, tape = 5000, reverse = 10000, cut = 20000 };

struct MarkWords {
    Role role;
    Length mark;  ///< x of the mark
    Length gap;   ///< from the mark to the words
    std::string text;
    Worth worth;
    std::vector<std::string> shorter = {};  ///< what the words come down to where they find no room, one by one
    bool box = false;                       ///< a box to tick stands before the words
    /// Where what the words speak of lies on one side of the mark: from the other side an arrow points there.
    enum class Side { both, left, right } side = Side::both;
    std::function<void()> draw_mark = {};  ///< of a mark that stands with its words alone
    bool over_marks = false;               ///< rather than be left out they hide a part of another mark's line
};

/// Sets words beside their marks, right or left of them, where the lane is free and no other mark stands. Where marks
/// are crowded some words are condensed, or tiny in half the lane's height, or shorter; where even that leaves no room
/// they stand further off, and an arrow leads to the mark. Only where no arrangement holds all of them the least worth
/// are left out, for the mark still stands. Takes what it uses from the lane. `base` is the strip's lower edge. `lines`
/// cross the lane there without words of their own.
void set_mark_words(Pen& pen, Length base, const Lanes& lanes, const std::vector<MarkWords>& all,
                    const std::vector<Length>& lines, Lane& lane);

}  // namespace kerfpacket::sheets
