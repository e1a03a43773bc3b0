#include "output/png.h"

#include <algorithm>

#include <libdeflate.h>

#include "output/big_endian.h"
#include "output/deflate.h"

namespace kerfpacket::output {
namespace {

void add_chunk(std::string& to, const std::string& kind, const std::string& data) {
    add_big_endian(to, data.size(), 4);
    const std::string checked = kind + data;
    to += checked;
    add_big_endian(to, libdeflate_crc32(0, checked.data(), checked.size()), 4);
}

}  // namespace

std::string ink_png(const unsigned char* ink, std::size_t width, std::size_t height, std::size_t stride) {
    std::string png = "\x89PNG\r\n\x1A\n";
    std::string header;
    add_big_endian(header, width, 4);
    add_big_endian(header, height, 4);
    header += {8, 0, 0, 0, 0};  // bits a pixel, grey, the only compression, the only filters, not interlaced
    add_chunk(png, "IHDR", header);
    // No filter: white paper with black lines packs best as it stands.
    std::string rows((width + 1) * height, '\0');
    for (std::size_t y = 0; y < height; ++y)
        std::transform(ink + y * stride, ink + y * stride + width,
                       rows.begin() + static_cast<std::ptrdiff_t>(y * (width + 1) + 1),
                       [](unsigned char pixel) { return static_cast<char>(255 - pixel); });
    add_chunk(png, "IDAT", deflated(rows));
    add_chunk(png, "IEND", "");
    return png;
}

}  // namespace kerfpacket::output
