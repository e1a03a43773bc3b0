#include "output/png.h"

#include <algorithm>
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

/// Eight at a time: this is done for every pixel.
void write_inverse(char* to, const unsigned char* bytes, std::size_t count) {
    std::size_t i = 0;
    for (std::uint64_t eight = 0; i + sizeof eight <= count; i += sizeof eight) {
        std::memcpy(&eight, bytes + i, sizeof eight);
        eight = ~eight;
        std::memcpy(to + i, &eight, sizeof eight);
    }
    std::transform(bytes + i, bytes + count, to + i, [](unsigned char byte) { return static_cast<char>(~byte); });
}

}  // namespace

std::string ink_png(const unsigned char* ink, std::size_t width, std::size_t height, std::size_t stride,
                    std::string& rows) {
    std::string png = "\x89PNG\r\n\x1A\n";
    std::string header;
    add_big_endian(header, width, 4);
    add_big_endian(header, height, 4);
    header += {8, 0, 0, 0, 0};  // bits a pixel, grey, the only compression, the only filters, not interlaced
    add_chunk(png, "IHDR", header);
    // No filter: white paper with black lines packs best as it stands.
    rows.resize((width + 1) * height);
    for (std::size_t y = 0; y < height; ++y) {
        char* const row = rows.data() + y * (width + 1);
        row[0] = '\0';
        write_inverse(row + 1, ink + y * stride, width);
    }
    add_chunk(png, "IDAT", deflated(rows));
    add_chunk(png, "IEND", "");
    return png;
}

}  // namespace kerfpacket::output
