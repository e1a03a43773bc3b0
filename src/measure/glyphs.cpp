#include "measure/glyphs.h"

#include <algorithm>
#include <array>
#include <charconv>

namespace kerfpacket::measure {
namespace {

/// Names in The Unicode Standard, from memory.
struct Glyph {
    std::string_view bytes;
    std::string_view plain;  ///< empty: it has no place in a length
    std::string_view name;
};
constexpr std::string_view minus_text("\x01", 1);
constexpr std::array<Glyph, 46> glyphs{{
    {"\u00BD", "1/2", ""},
    {"\u00BC", "1/4", ""},
    {"\u00BE", "3/4", ""},
    {"\u215B", "1/8", ""},
    {"\u215C", "3/8", ""},
    {"\u215D", "5/8", ""},
    {"\u215E", "7/8", ""},
    {"\u2153", "1/3", ""},
    {"\u2154", "2/3", ""},
    {"\u2155", "1/5", ""},
    {"\u2159", "1/6", ""},
    {"\u2152", "1/10", ""},
    {"\u2044", "/", ""},         // fraction slash
    {"\u2215", "/", ""},         // division slash
    {"\u00A0", " ", ""},         // no-break space
    {"\u2007", " ", ""},         // figure space
    {"\u2009", " ", ""},         // thin space
    {"\u202F", " ", ""},         // narrow no-break space
    {"\u2010", "-", ""},         // hyphen
    {"\u2011", "-", ""},         // no-break hyphen
    {"\u2013", "-", ""},         // en dash
    {"\u2014", "-", ""},         // em dash
    {"\u2212", minus_text, ""},  // minus
    {"\u2032", "'", ""},         // prime
    {"\u2018", "'", ""},         // curly quotes
    {"\u2019", "'", ""},
    {"\u2033", "\"", ""},  // double prime
    {"\u201C", "\"", ""},
    {"\u201D", "\"", ""},
    {"\u00D7", "", "the multiplication sign"},
    {"\u00F7", "", "the division sign"},
    {"\u00B1", "", "the plus-minus sign"},
    {"\u00B0", "", "the degree sign"},
    {"\u00B4", "", "the acute accent"},
    {"\u00B9", "", "a raised 1"},
    {"\u00B2", "", "a raised 2"},
    {"\u00B3", "", "a raised 3"},
    {"\u215F", "", "a raised 1 with a fraction line"},
    {"\u2026", "", "three dots in one character"},
    {"\u00B7", "", "the middle dot"},
    {"\u066B", "", "the Arabic decimal separator"},
    {"\u200B", "", "the zero-width space"},
    {"\u200E", "", "the left-to-right mark"},
    {"\u200F", "", "the right-to-left mark"},
    {"\uFEFF", "", "the byte order mark"},
    {"\u00AD", "", "the soft hyphen"},
}};

bool is_digit(char c) { return c >= '0' && c <= '9'; }

/// Bytes of the character that begins here; one where it is no UTF-8.
std::size_t size_of(std::string_view text) {
    const auto lead = static_cast<unsigned char>(text.front());
    const std::size_t wanted = lead < 0xC0 ? 1 : lead < 0xE0 ? 2 : lead < 0xF0 ? 3 : 4;
    return std::min(wanted, text.size());
}

/// "U+00D7".
std::string code_of(std::string_view character) {
    unsigned value = static_cast<unsigned char>(character.front());
    if (character.size() > 1) value &= 0x7FU >> character.size();
    for (const char c : character.substr(1)) value = (value << 6U) | (static_cast<unsigned char>(c) & 0x3FU);
    std::array<char, 8> digits{};
    const auto end = std::to_chars(digits.data(), digits.data() + digits.size(), value, 16).ptr;
    std::string code(digits.data(), end);
    std::transform(code.begin(), code.end(), code.begin(),
                   [](char c) { return c >= 'a' && c <= 'f' ? static_cast<char>(c - 'a' + 'A') : c; });
    return "U+" + std::string(4 - std::min<std::size_t>(4, code.size()), '0') + code;
}

void add(Plain& plain, std::string_view text, std::size_t at) {
    plain.text += text;
    plain.at.insert(plain.at.end(), text.size(), at);
}

}  // namespace

Plain plain_characters(std::string_view text) {
    Plain plain;
    for (std::size_t at = 0; at < text.size();) {
        const auto character = text.substr(at, size_of(text.substr(at)));
        const auto* glyph =
            std::find_if(glyphs.begin(), glyphs.end(), [&](const Glyph& g) { return g.bytes == character; });
        const bool ascii = character.size() == 1 && static_cast<unsigned char>(character[0]) < 0x7F;
        const bool printed = ascii && (character[0] >= ' ' || character[0] == '\t');
        if (printed) {
            add(plain, character == "\t" ? " " : character, at);
        } else if (glyph != glyphs.end() && !glyph->plain.empty()) {
            const bool fraction = is_digit(glyph->plain[0]);
            if (fraction && !plain.text.ends_with('-')) add(plain, " ", at);
            add(plain, glyph->plain, at);
            if (fraction) add(plain, " ", at);
        } else {
            plain.stopped = at;
            plain.stranger = glyph != glyphs.end() ? std::string(glyph->name) + " (" + code_of(character) + ")"
                                                   : "the character " + code_of(character);
            break;
        }
        at += character.size();
    }
    plain.at.push_back(text.size());
    return plain;
}

}  // namespace kerfpacket::measure
