#include "output/codes.h"

#include "fonts/utf8.h"
#include "measure/require.h"

namespace kerfpacket::output {
namespace {

/// The codes that stand for themselves. A0 and AD are a space and a hyphen to some readers; what is before the space
/// and after the tilde is no character.
constexpr bool itself(char32_t c) { return (c >= 0x20 && c <= 0x7E) || (c > 0xA0 && c <= 0xFF && c != 0xAD); }

/// Free for other characters: in the first font what does not stand for itself, in a further one all after the space.
/// The ends of lines stay out of strings.
constexpr bool free_code(std::size_t font, unsigned code) {
    if (font > 0) return code > 0x20;
    return code != '\t' && code != '\n' && code != '\r' && !itself(code);
}

char32_t taken_off(std::string_view& text) {
    if (const auto byte = static_cast<unsigned char>(text.front()); byte < 0x80) {
        text.remove_prefix(1);
        return byte;
    }
    const auto character = fonts::take_character(text);
    measure::require(character.has_value(), "a text on a page is UTF-8");
    return *character;
}

}  // namespace

Codes::Code Codes::code_of(char32_t character) const {
    if (character < low_.size()) return low_.at(character);
    const auto found = others_.find(character);
    return found == others_.end() ? Code{} : found->second;
}

Codes::Code Codes::next_free() {
    for (unsigned code = 1; code <= 0xFF; ++code) {
        const auto byte = static_cast<unsigned char>(code);
        const std::size_t font = fonts_.size() - 1;
        if (free_code(font, code) && !fonts_.back().contains(byte)) return {font, byte};
    }
    fonts_.push_back({{' ', U' '}});
    return next_free();
}

void Codes::give(char32_t character) {
    if (fonts_.empty()) {
        fonts_.push_back({{' ', U' '}});
        low_.at(' ') = {0, ' '};
        if (character == ' ') return;
    }
    const Code code = itself(character) ? Code{0, static_cast<unsigned char>(character)} : next_free();
    fonts_.at(code.font).emplace(code.byte, character);
    if (character < low_.size()) low_.at(character) = code;
    else others_.emplace(character, code);
}

void Codes::take(std::string_view text) {
    while (!text.empty())
        if (const char32_t character = taken_off(text); code_of(character).byte == 0) give(character);
}

std::vector<Coded> Codes::coded(std::string_view text) const {
    std::vector<Coded> all;
    while (!text.empty()) {
        const char32_t character = taken_off(text);
        const Code code = code_of(character);
        measure::require(code.byte != 0, "a character has a code before it is written");
        if (all.empty() || (all.back().font != code.font && character != ' ')) all.push_back({code.font, {}});
        all.back().bytes += static_cast<char>(code.byte);
    }
    return all;
}

}  // namespace kerfpacket::output
