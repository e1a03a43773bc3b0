#pragma once
// Where the words of a label stand, whatever its size: beside the square code, then below it.

#include <optional>
#include <string>
#include <vector>

#include "sheets/labels/label_words.h"
#include "sheets/layout/pen.h"

namespace kerfpacket::sheets {

/// How large a label is set.
struct LabelSetting {
    Length tag;
    Length length;
    Length text;
    bool condensed = false;
    bool one_row = false;  ///< its length beside the tag
    bool joined = false;   ///< what it is beside them too, and two of the other lines on one: for low, wide labels
    bool square = false;   ///< the tag white in a black square, what it is and its length beside it
};

/// From the most generous to the smallest that is still read at arm's length: nothing under the small type.
std::vector<LabelSetting> label_settings(const fonts::Style& style);

struct PlacedLine {
    Length x;     ///< from the left of the label's room
    Length down;  ///< of its baseline, from the top
    std::string text;
    Type type;
};

struct PlacedLabel {
    std::vector<PlacedLine> lines;
    Length height;     ///< the code's height at least
    Length tag_width;  ///< of the black square behind the first line; 0 for none
    Length tag_height;
};

/// The words in a room of that width, the code at its upper right; none where a word is wider than its place.
std::optional<PlacedLabel> place_label(const LabelText& text, Length width, const LabelSetting& setting,
                                       const Kit& kit);

}  // namespace kerfpacket::sheets
