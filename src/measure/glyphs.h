#pragma once
// The characters that phones and word processors put in place of those of a keyboard.

#include <string>
#include <string_view>
#include <vector>

namespace kerfpacket::measure {

/// Stands for U+2212, the sign that can mean nothing but "less".
inline constexpr char minus_sign = '\x01';

/// A length in the characters of a keyboard. Fractions of one character are written out with a space on either side
/// (none behind a dash), so that they touch no other figure; primes, dashes and spaces of every kind are the plain
/// ones.
struct Plain {
    std::string text;
    std::vector<std::size_t> at;  ///< for each byte, and for the end: where it stood
    std::size_t stopped = 0;      ///< where a character stands that no length has
    std::string stranger;         ///< that character with its name; empty where there is none
};

Plain plain_characters(std::string_view text);

}  // namespace kerfpacket::measure
