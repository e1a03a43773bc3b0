#include "text/characters.h"

#include <algorithm>
#include <array>

namespace kerfpacket::text {
namespace {

unsigned byte_at(std::string_view text, std::size_t at) { return static_cast<unsigned char>(text[at]); }

bool is_continuation(char c) { return (static_cast<unsigned char>(c) & 0xC0U) == 0x80U; }

/// Length in bytes of a sequence that starts with `first`, 0 when none can.
std::size_t sequence_length(unsigned first) {
    if (first < 0x80) return 1;
    if (first >= 0xC2 && first <= 0xDF) return 2;
    if (first >= 0xE0 && first <= 0xEF) return 3;
    if (first >= 0xF0 && first <= 0xF4) return 4;
    return 0;
}

/// The second byte is what tells overlong forms, surrogates and values past U+10FFFF.
bool second_byte_fits(unsigned first, unsigned second) {
    switch (first) {
        case 0xE0: return second >= 0xA0;
        case 0xED: return second <= 0x9F;
        case 0xF0: return second >= 0x90;
        case 0xF4: return second <= 0x8F;
        default: return true;
    }
}

/// Unicode's controls, its line and paragraph separators, and its marks of direction and byte order.
bool is_shapeless(char32_t point) {
    constexpr std::array<std::array<char32_t, 2>, 7> ranges{{{0x00, 0x1F},
                                                             {0x7F, 0x9F},
                                                             {0x061C, 0x061C},
                                                             {0x200E, 0x200F},
                                                             {0x2028, 0x202E},
                                                             {0x2066, 0x2069},
                                                             {0xFEFF, 0xFEFF}}};
    return std::any_of(ranges.begin(), ranges.end(),
                       [&](const auto& range) { return range[0] <= point && point <= range[1]; });
}

}  // namespace

std::optional<std::size_t> first_bad_utf8(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t length = sequence_length(byte_at(text, at));
        if (length == 0 || at + length > text.size()) return at;
        const auto rest = text.substr(at + 1, length - 1);
        if (!std::all_of(rest.begin(), rest.end(), is_continuation)) return at;
        if (length > 1 && !second_byte_fits(byte_at(text, at), byte_at(text, at + 1))) return at;
        at += length;
    }
    return std::nullopt;
}

char32_t code_point(std::string_view character) {
    // A first byte of 2, 3 or 4 keeps its lowest 5, 4 or 3 bits for the character.
    const unsigned lead = byte_at(character, 0);
    char32_t value = character.size() > 1 ? lead & (0x7FU >> character.size()) : lead;
    for (std::size_t i = 1; i < character.size(); ++i) value = (value << 6U) | (byte_at(character, i) & 0x3FU);
    return value;
}

std::size_t characters(std::string_view text) {
    return static_cast<std::size_t>(
        std::count_if(text.begin(), text.end(), [](char c) { return !is_continuation(c); }));
}

std::size_t byte_of_character(std::string_view text, std::size_t index) {
    std::size_t seen = 0;
    for (std::size_t at = 0; at < text.size(); ++at) {
        if (is_continuation(text[at])) continue;
        if (seen == index) return at;
        ++seen;
    }
    return text.size();
}

std::string printable(std::string_view text, Tabs tabs) {
    std::string out;
    for (std::size_t at = 0; at < text.size();) {
        const auto rest = text.substr(at);
        const auto character = rest.substr(0, std::max<std::size_t>(byte_of_character(rest, 1), 1));
        const bool kept = tabs == Tabs::keep && character == "\t";
        if (!kept && is_shapeless(code_point(character))) out += '?';
        else out += character;
        at += character.size();
    }
    return out;
}

std::string in_quotes(std::string_view words) {
    constexpr std::size_t most = 40;
    const std::size_t end = byte_of_character(words, most);
    return "\"" + printable(words.substr(0, end)) + (end < words.size() ? "...\"" : "\"");
}

std::vector<std::string_view> split_lines(std::string_view text) {
    std::vector<std::string_view> lines;
    while (!text.empty()) {
        const std::size_t end = std::min(text.find('\n'), text.size());
        auto line = text.substr(0, end);
        if (!line.empty() && line.back() == '\r') line.remove_suffix(1);
        lines.push_back(line);
        text.remove_prefix(std::min(end + 1, text.size()));
    }
    return lines;
}

}  // namespace kerfpacket::text
