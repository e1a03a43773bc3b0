#pragma once
// What of a length could be taken in two ways. A tape is read once and a board is cut once: where a careful reader
// could take a figure for another one, both readings are spelled out, and how to write each.

#include <optional>
#include <string>

#include "measure/fraction.h"

namespace kerfpacket::measure {

/// Digits with points and commas among them, and the byte they begin at in the text. Empty: none stands there.
struct Digits {
    std::string text;
    std::size_t at = 0;
    bool given() const { return !text.empty(); }
};

/// What joins a whole number and its fraction.
enum class Join { space, dash, loose_dash };

/// A number as it is written: "58", "0.118", "3/4" (no whole), "58-3/4".
struct Figure {
    Digits whole;
    Digits top;
    Digits bottom;
    Join join = Join::space;
    bool fraction() const { return bottom.given(); }
};

/// What stands before and behind a figure; a reading of it is written between the two.
struct Around {
    std::string before;  ///< "", "-", "4 ft "
    std::string after;   ///< "", " in", " mm"
    bool metric = false;
    bool millimetres = false;

    std::string with(const std::string& figure) const { return "\"" + before + figure + after + "\""; }
};

/// Why a figure is no number, or could be two: judged in this order, so that what passes has one reading.
std::optional<LengthError> doubt(const Figure& figure, const Around& around);
/// Of a figure without doubts.
double value_of(const Figure& figure);

/// "`what` can be read in two ways", with how to write either.
LengthError two_ways(std::size_t at, const std::string& one, const std::string& other);
/// A number of inches or of something metric, as it would be written: "58-3/4", "14.575".
std::string figure_text(double value, bool metric);

}  // namespace kerfpacket::measure
