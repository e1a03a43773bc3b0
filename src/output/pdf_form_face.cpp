#include "output/pdf_form_face.h"

#include <array>

#include <fmt/format.h>

#include "output/font_file.h"

namespace kerfpacket::output {
namespace {

/// A code that has another character than in WinAnsiEncoding, and that character's name (Adobe Glyph List).
struct Different {
    unsigned code;
    char32_t character;
    const char* name;
};
constexpr std::array<Different, 8> different{{{0x7F, 0x2032, "minute"},
                                              {0x81, 0x215B, "oneeighth"},
                                              {0x83, 0x2044, "fraction"},
                                              {0x87, 0x2212, "minus"},
                                              {0x8D, 0x215C, "threeeighths"},
                                              {0x8F, 0x215D, "fiveeighths"},
                                              {0x90, 0x215E, "seveneighths"},
                                              {0x9D, 0x2033, "second"}}};

/// Codes 80 to 9F (hexadecimal) of WinAnsiEncoding (ISO 32000-1, annex D.2); 0 where there is no character.
constexpr std::array<char32_t, 32> upper_controls = {0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021,
                                                     0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0,      0x017D, 0,
                                                     0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014,
                                                     0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};

constexpr unsigned first_code = 0x20, last_code = 0xFF;

char32_t character_of(unsigned code) {
    for (const Different& one : different)
        if (one.code == code) return one.character;
    // The encoding makes a space of a no-break space, and a hyphen of a soft one.
    if (code == 0xA0) return U' ';
    if (code == 0xAD) return U'-';
    return code >= 0x80 && code < 0xA0 ? upper_controls.at(code - 0x80) : static_cast<char32_t>(code);
}

}  // namespace

Ref form_face(PdfFile& file, const std::string& bytes) {
    const FontFile face(bytes);
    std::string widths, differences;
    for (unsigned code = first_code; code <= last_code; ++code)
        widths += fmt::format("{} ", face.width(character_of(code)));
    for (const Different& one : different) differences += fmt::format("{} /{} ", one.code, one.name);
    const Ref program = file.add_stream(fmt::format("/Length1 {}", bytes.size()), bytes);
    // DejaVu Sans: its capitals are 729/1000 high.
    const Ref descriptor =
        file.add(fmt::format("<</Type/FontDescriptor/FontName/AAAAAA+DejaVuSans/Flags 32/ItalicAngle 0"
                             "/StemV 80/CapHeight 729{}/FontFile2 {}>>",
                             face.extents(), named(program)));
    return file.add(
        fmt::format("<</Type/Font/Subtype/TrueType/BaseFont/AAAAAA+DejaVuSans/FirstChar {}/LastChar {}"
                    "/Encoding<</Type/Encoding/BaseEncoding/WinAnsiEncoding/Differences[{}]>>/Widths[{}]"
                    "/FontDescriptor {}>>",
                    first_code, last_code, differences, widths, named(descriptor)));
}

}  // namespace kerfpacket::output
