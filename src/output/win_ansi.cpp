#include "output/win_ansi.h"

#include <algorithm>
#include <array>

#include "fonts/utf8.h"

namespace kerfpacket::output {
namespace {

/// Codes 80 to 9F (hexadecimal) of WinAnsiEncoding; 0 where there is no character.
constexpr std::array<char32_t, 32> upper_controls = {0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021,
                                                     0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0,      0x017D, 0,
                                                     0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014,
                                                     0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};

/// The no-break space (A0) and the soft hyphen (AD) are left out: WinAnsiEncoding makes a space and a hyphen of them.
bool same_in_both(char32_t c) { return (c >= 0x20 && c <= 0x7E) || (c > 0xA0 && c <= 0xFF && c != 0xAD); }

std::optional<char> code_of(char32_t c) {
    if (same_in_both(c)) return static_cast<char>(c);
    const auto* found = c == 0 ? upper_controls.end() : std::find(upper_controls.begin(), upper_controls.end(), c);
    if (found == upper_controls.end()) return std::nullopt;
    return static_cast<char>(0x80 + (found - upper_controls.begin()));
}

}  // namespace

std::optional<std::string> win_ansi(std::string_view text) {
    std::string codes;
    while (!text.empty()) {
        const std::optional<char32_t> character = fonts::take_character(text);
        const std::optional<char> code = character ? code_of(*character) : std::nullopt;
        if (!code) return std::nullopt;
        codes += *code;
    }
    return codes;
}

char32_t win_ansi_character(unsigned code) {
    if (code == 0x7F) return 0;
    if (code == 0xA0) return U' ';
    if (code == 0xAD) return U'-';
    return code >= 0x80 && code < 0xA0 ? upper_controls.at(code - 0x80) : static_cast<char32_t>(code);
}

}  // namespace kerfpacket::output
