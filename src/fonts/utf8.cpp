#include "fonts/utf8.h"

#include <cstddef>

#include "measure/require.h"

namespace kerfpacket::fonts {
namespace {

/// Length of the sequence that a byte leads, 0 when it leads none.
std::size_t sequence_length(unsigned char lead) {
    if (lead < 0x80) return 1;
    if (lead < 0xC2) return 0;  // a continuation byte, or the start of an overlong form
    if (lead < 0xE0) return 2;
    if (lead < 0xF0) return 3;
    return lead < 0xF5 ? 4 : 0;
}

bool allowed(char32_t character, std::size_t length) {
    if (length == 3) return character >= 0x800 && (character < 0xD800 || character > 0xDFFF);
    if (length == 4) return character >= 0x10000 && character <= 0x10FFFF;
    return true;
}

}  // namespace

std::optional<char32_t> take_character(std::string_view& text) {
    measure::require(!text.empty(), "there is a character to take");
    const auto lead = static_cast<unsigned char>(text.front());
    const std::size_t length = sequence_length(lead);
    if (length == 0 || length > text.size()) return std::nullopt;
    char32_t character = length == 1 ? lead : lead & (0x7FU >> length);
    for (std::size_t i = 1; i < length; ++i) {
        const auto byte = static_cast<unsigned char>(text[i]);
        if ((byte & 0xC0U) != 0x80U) return std::nullopt;
        character = (character << 6U) | (byte & 0x3FU);
    }
    if (!allowed(character, length)) return std::nullopt;
    text.remove_prefix(length);
    return character;
}

}  // namespace kerfpacket::fonts
