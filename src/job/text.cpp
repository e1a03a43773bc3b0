#include "job/text.h"

#include <algorithm>

namespace kerfpacket::job {
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

bool is_control(char c) { return static_cast<unsigned char>(c) < 0x20 || c == 0x7F; }

std::string in_quotes(std::string_view words) {
    constexpr std::size_t most = 40;
    const std::size_t end = byte_of_character(words, most);
    std::string text = "\"" + std::string(words.substr(0, end));
    std::replace_if(text.begin(), text.end(), is_control, '?');
    return text + (end < words.size() ? "...\"" : "\"");
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

std::string listed(const std::vector<std::string_view>& words, std::string_view quote) {
    std::string row;
    for (const auto word : words) {
        if (!row.empty()) row += ", ";
        row.append(quote).append(word).append(quote);
    }
    return row;
}

}  // namespace kerfpacket::job
