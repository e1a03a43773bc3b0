#pragma once
// Grey pictures as PNG (ISO/IEC 15948).

#include <cstddef>
#include <string>

namespace kerfpacket::output {

/// Of rows of one byte a pixel, each `stride` bytes after the one before.
std::string grey_png(const unsigned char* pixels, std::size_t width, std::size_t height, std::size_t stride);

}  // namespace kerfpacket::output
