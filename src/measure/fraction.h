#pragma once
// Lengths as a carpenter writes and reads them: feet and inches with fractions, decimals, millimetres.

#include <string>
#include <string_view>

#include <tl/expected.hpp>

#include "measure/length.h"

namespace kerfpacket::measure {

/// The unit of bare numbers, and of what is printed for a hand tape.
enum class Unit { inch, millimetre };

/// Why a length could not be read: plain words, and the byte offset into the text where it went wrong.
struct LengthError {
    std::string message;
    std::size_t offset = 0;
    std::string hint;  ///< how to write what may be meant; may be empty
};

/// Reads a length: "4 ft 2-1/2 in", `6' 2 1/2"`, "1880 mm", "0.118 in", "12-3/4", "-1 in"; a number without a
/// unit is in `unit`. Fractions, dashes, primes and spaces as phones and word processors type them are read too. What
/// could be taken in two ways is an error that spells out both. Finite values only; never reads a locale. The sign is
/// kept: callers judge it.
tl::expected<Length, LengthError> parse_length(std::string_view text, Unit unit);

/// The nearest whole number, halves away from zero; what computing leaves short of a half (1e-9) counts as one. Every
/// figure that is rounded for a tape is rounded by this, so that a figure and what is told of its rest agree.
double nearest(double value);
/// Nearest multiple of 1/`denominator` inch, by `nearest`.
Length round_to_inch_fraction(Length value, int denominator);

/// As a hand tape tells it: the nearest 1/16 in, or the nearest millimetre.
Length round_to_tape(Length value, Unit unit);
/// The same, but not to less than it is: what is cut out of a board must not be short.
Length up_to_tape(Length value, Unit unit);

/// Inches as a reduced fraction of at most 1/`denominator`: 7-3/4 -> "7-3/4", 0.5 -> "1/2", 12 -> "12",
/// negative with a leading minus. No unit is added. The value is rounded first.
std::string inch_fraction(Length value, int denominator = 16);

/// True when the value is within 1e-6 in of a multiple of 1/`denominator` inch.
bool is_inch_fraction(Length value, int denominator);

/// Inches as the shortest exact-looking text: a fraction when it is one (to 1/64), else decimals to `places`.
std::string inch_text(Length value, int places = 3);

/// Millimetres with a fixed number of decimals and no unit ("1327.1").
std::string mm_text(Length value, int places = 1);
/// A length with its unit, for messages: "72 in", "1880 mm", "19.05 mm".
std::string length_text(Length value, Unit unit);

/// A number with a fixed number of decimals in the classic locale, exact halves away from zero; "-0.0" prints as "0.0".
std::string fixed(double value, int places);

}  // namespace kerfpacket::measure
