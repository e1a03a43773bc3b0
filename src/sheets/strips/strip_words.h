#pragma once
// The words beside the marks of a strip: which side of its mark each takes, so that all find room in the words lane.

#include <string>
#include <vector>

#include "sheets/layout/lane.h"
#include "sheets/layout/pen.h"
#include "sheets/strips/strip_lanes.h"

namespace kerfpacket::sheets {

struct MarkWords {
    Role role;
    Length mark;  ///< x of the mark
    Length gap;   ///< from the mark to the words
    std::string text;
    bool box = false;          ///< a box to tick stands before the words
    std::string shorter = {};  ///< what the words come down to where they find no room
    int worth = 100;           ///< how much worse the strip is without them, where not all find room
};

/// Sets words beside their marks, right or left of them, where the lane is free and no other mark stands. Where marks
/// are crowded some words are condensed, or tiny in half the lane's height; words for which even that leaves no room
/// are left out, for the mark still stands. Takes what it uses from the lane. `base` is the strip's lower edge.
void set_mark_words(Pen& pen, Length base, const Lanes& lanes, const std::vector<MarkWords>& all, Lane& lane);

}  // namespace kerfpacket::sheets
