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

void add_whole(std::string& to, long long value) {
    std::array<char, 24> digits{};
    to.append(digits.data(), std::to_chars(digits.begin(), digits.end(), value).ptr);
}

/// Of a whole number of parts, 10 to the power of `decimals` to the unit.
void add_parts(std::string& to, long long parts, int decimals) {
    if (parts < 0) to += '-';
    long long rest = std::abs(parts), unit = 1;
    for (int i = 0; i < decimals; ++i) unit *= 10;
    add_whole(to, rest / unit);
    rest %= unit;
    if (rest == 0) return;
    to += '.';
    while (rest > 0) {
        unit /= 10;
        to += static_cast<char>('0' + rest / unit);
        rest %= unit;
    }
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

void add_number(std::string& to, double value, int decimals) {
    add_parts(to, std::llround(value * std::pow(10, decimals)), decimals);
}

void add_thousandths(std::string& to, long long value) { add_parts(to, value, 3); }

std::string corners(const geom::Rect& area) {
    std::string text;
    for (const Length side : {area.low.x, area.low.y, area.high.x, area.high.y}) {
        text += text.empty() ? '[' : ' ';
        add_length(text, side);
    }
    return text + "]";
}

std::string literal(std::string_view bytes) {
    std::string text = "(";
    for (const char c : bytes) {
        if (c == '(' || c == ')' || c == '\\') text += '\\';
        // A reader takes the end of a line, however it is written, for a line feed.
        if (c == '\r') text += "\\r";
        else text += c;
    }
    return text + ")";
}

std::string text_string(std::string_view text) {
    const auto ascii = [](char c) { return c == '\n' || (c >= ' ' && c <= '~'); };
    return literal(std::all_of(text.begin(), text.end(), ascii) ? std::string(text) : utf16(text));
}

}  // namespace kerfpacket::output
