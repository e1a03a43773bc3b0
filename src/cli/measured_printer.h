#pragma once
// What was measured on the check page, made a profile.

#include <array>
#include <optional>
#include <string>

#include "job/printer.h"
#include "measure/length.h"

namespace kerfpacket::cli {

using measure::Length;

/// Edges of the check page as its words are read.
enum class Edge { top, bottom, left, right };

/// A check page in the hand.
struct Measured {
    Edge first = Edge::top;  ///< came out of the printer first
    Length level, upright;   ///< the bars as printed
    Length true_level, true_upright;
    std::array<Length, 4> lost;                      ///< what shows nothing: at the top, bottom, left, right
    std::optional<std::array<Length, 2>> diagonals;  ///< A to C and B to D
};

job::Profile profile_of(const Measured& measured, const std::string& name);

/// How far the upright bar's upper end stands out of square to the right, from the two diagonals of the sheared
/// rectangle w by h: AC^2 = (w + e)^2 + h^2 and BD^2 = (w - e)^2 + h^2 (Pythagoras), so e = (AC^2 - BD^2) / 4 w.
Length out_of_square(const Measured& measured);

/// More than this over the page is told. Judgement, no source.
inline constexpr Length most_out_of_square = Length::inches(1.0 / 32);

}  // namespace kerfpacket::cli
