#pragma once
// Whole numbers as bytes, the highest first, as PDF, PNG and UTF-16 have them.

#include <cstddef>
#include <string>

namespace kerfpacket::output {

/// Adds the lowest so many bytes of a number.
inline void add_big_endian(std::string& to, std::size_t value, unsigned bytes) {
    for (unsigned i = bytes; i-- > 0;) to += static_cast<char>(value >> (8 * i) & 0xFFU);
}

}  // namespace kerfpacket::output
