#include "output/pdf_text.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

#include "fonts/utf8.h"
#include "measure/require.h"
#include "output/big_endian.h"

namespace kerfpacket::output {
namespace {

/// Of a whole number of parts, `unit` of which are one.
void add_parts(std::string& to, long long parts, long long unit) {
    std::array<char, 32> text{};
    char* end = text.data();
    if (parts < 0) *end++ = '-';
    const long long size = std::abs(parts);
    end = std::to_chars(end, text.data() + text.size(), size / unit).ptr;
    if (size % unit != 0) *end++ = '.';
    for (long long rest = size % unit; rest != 0; rest = rest * 10 % unit)
        *end++ = static_cast<char>('0' + rest * 10 / unit);
    to.append(text.data(), end);
}

std::string utf16(std::string_view text) {
    std::string bytes = "\xFE\xFF";
    while (!text.empty()) {
        const auto character = fonts::take_character(text);
        measure::require(character.has_value(), "a text in a PDF is UTF-8");
        if (*character < 0x10000) add_big_endian(bytes, *character, 2);
        else {
            add_big_endian(bytes, 0xD800 + ((*character - 0x10000) >> 10U), 2);
            add_big_endian(bytes, 0xDC00 + ((*character - 0x10000) & 0x3FFU), 2);
        }
    }
    return bytes;
}

}  // namespace

long long thousandths(Length value) {
    measure::require(value.finite(), "a coordinate in a PDF is finite");
    const double parts = std::round(value.points() * 1000);
    measure::require(std::abs(parts) < 32767000, "a coordinate in a PDF is under 32767 points");
    return static_cast<long long>(parts);
}

long long to_a_hundredth(Length value) {
    const long long parts = thousandths(value);
    return (parts + (parts < 0 ? -5 : 5)) / 10 * 10;
}

void add_number(std::string& to, double value, int decimals) {
    long long unit = 1;
    for (int i = 0; i < decimals; ++i) unit *= 10;
    add_parts(to, std::llround(value * static_cast<double>(unit)), unit);
}

void add_thousandths(std::string& to, long long value) { add_parts(to, value, 1000); }

std::string corners(const geom::Rect& area) {
    std::string text;
    for (const Length side : {area.low.x, area.low.y, area.high.x, area.high.y}) {
        text += text.empty() ? '[' : ' ';
        add_length(text, side);
    }
    return text + "]";
}

void add_literal(std::string& to, std::string_view bytes) {
    to += '(';
    while (!bytes.empty()) {
        const std::size_t plain = std::min(bytes.find_first_of("()\\\r"), bytes.size());
        to.append(bytes.substr(0, plain));
        bytes.remove_prefix(plain);
        if (bytes.empty()) break;
        to += '\\';
        // A reader takes the end of a line, however it is written, for a line feed.
        to += bytes.front() == '\r' ? 'r' : bytes.front();
        bytes.remove_prefix(1);
    }
    to += ')';
}

std::string text_string(std::string_view text) {
    const auto ascii = [](char c) { return c == '\n' || (c >= ' ' && c <= '~'); };
    std::string written;
    if (std::all_of(text.begin(), text.end(), ascii)) add_literal(written, text);
    else add_literal(written, utf16(text));
    return written;
}

}  // namespace kerfpacket::output
