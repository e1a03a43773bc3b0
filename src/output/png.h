#pragma once
// Grey pictures as PNG (ISO/IEC 15948).

#include <cstddef>
#include <string>

namespace kerfpacket::output {

/// Black on white in 16 shades, which eyes take for all, of rows of one byte a pixel that tells how much ink there is,
/// each `stride` bytes after the one before. The rows of the picture are made in `rows`: memory that need not be found
/// anew for each of many.
std::string ink_png(const unsigned char* ink, std::size_t width, std::size_t height, std::size_t stride,
                    std::string& rows);

}  // namespace kerfpacket::output
