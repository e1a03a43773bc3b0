#include "output/png.h"

#include <bit>
#include <cstdint>
#include <cstring>

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

/// Four bytes of eight, the low half of each pair of them; the first byte is the lowest.
std::uint32_t every_other(std::uint64_t bytes) {
    bytes &= 0x00FF00FF00FF00FFU;
    bytes = (bytes | bytes >> 8U) & 0x0000FFFF0000FFFFU;
    return static_cast<std::uint32_t>(bytes | bytes >> 16U);
}

/// Two pixels a byte, the left one in the higher half. Ink is dark, and what is written is light.
void write_shades(char* to, const unsigned char* ink, std::size_t width) {
    std::size_t i = 0;
    // Eight at a time, where the first byte is the lowest: this is done for every pixel.
    if constexpr (std::endian::native == std::endian::little)
        for (std::uint64_t eight = 0; i + sizeof eight <= width; i += sizeof eight) {
            std::memcpy(&eight, ink + i, sizeof eight);
            const std::uint32_t light =
                ~every_other((eight & 0x00F000F000F000F0U) | (eight >> 12U & 0x000F000F000F000FU));
            std::memcpy(to + i / 2, &light, sizeof light);
        }
    for (; i < width; i += 2) {
        const unsigned right = i + 1 < width ? ink[i + 1] : 0U;
        to[i / 2] = static_cast<char>(~((ink[i] & 0xF0U) | right >> 4U));
    }
}

}  // namespace

std::string ink_png(const unsigned char* ink, std::size_t width, std::size_t height, std::size_t stride,
                    std::string& rows) {
    std::string png = "\x89PNG\r\n\x1A\n";
    std::string header;
    add_big_endian(header, width, 4);
    add_big_endian(header, height, 4);
    header += {4, 0, 0, 0, 0};  // bits a pixel, grey, the only compression, the only filters, not interlaced
    add_chunk(png, "IHDR", header);
    // No filter: white paper with black lines packs best as it stands.
    const std::size_t row_bytes = 1 + (width + 1) / 2;
    rows.resize(row_bytes * height);
    for (std::size_t y = 0; y < height; ++y) {
        char* const row = rows.data() + y * row_bytes;
        row[0] = '\0';
        write_shades(row + 1, ink + y * stride, width);
    }
    add_chunk(png, "IDAT", deflated(rows, Packing::quick));
    add_chunk(png, "IEND", "");
    return png;
}

}  // namespace kerfpacket::output
