#include "output/pdf_fonts.h"

#include <algorithm>
#include <cmath>
#include <cstdint>
#include <iterator>
#include <map>

#include <fmt/format.h>

#include "output/font_file.h"
#include "output/pdf_text.h"

namespace kerfpacket::output {
namespace {

using Characters = std::map<unsigned char, char32_t>;

/// Codes in a row, the characters of which follow each other as they do. What lies between two of them may be no code
/// of the font.
struct Range {
    unsigned first = 0;
    unsigned last = 0;
    char32_t character = 0;  ///< of the first

    /// A range keeps to the characters that differ in their last byte alone (Adobe Technical Note 5014).
    bool goes_on_with(unsigned code, char32_t next) const {
        return next - character == code - first && next >> 8U == character >> 8U;
    }
};

std::vector<Range> ranges_of(const Characters& characters) {
    std::vector<Range> ranges;
    for (const auto& [code, character] : characters) {
        if (!ranges.empty() && ranges.back().goes_on_with(code, character)) ranges.back().last = code;
        else ranges.push_back({code, code, character});
    }
    return ranges;
}

/// Text can be copied out by it (ISO 32000-1, 9.10.3); a hundred ranges are the most in a block (Adobe Technical Note
/// 5014).
std::string map_to_text(const Characters& characters) {
    std::string map =
        "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
        "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n"
        "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n1 begincodespacerange\n<00> <FF>\nendcodespacerange\n";
    constexpr std::size_t most = 100;
    const std::vector<Range> ranges = ranges_of(characters);
    for (std::size_t i = 0; i < ranges.size(); ++i) {
        if (i % most == 0)
            fmt::format_to(std::back_inserter(map), "{} beginbfrange\n", std::min(ranges.size() - i, most));
        fmt::format_to(std::back_inserter(map), "<{:02X}> <{:02X}> <{:04X}>\n", ranges[i].first, ranges[i].last,
                       static_cast<unsigned>(ranges[i].character));
        if (i % most == most - 1 || i + 1 == ranges.size()) map += "endbfrange\n";
    }
    return map + "endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
}

std::string widths_of(const Characters& characters, const FontFile& face) {
    std::string widths;
    unsigned next = characters.begin()->first;
    for (const auto& [code, character] : characters) {
        for (; next < code; ++next) widths += "0 ";
        fmt::format_to(std::back_inserter(widths), "{} ", face.width(character));
        ++next;
    }
    widths.pop_back();
    return widths;
}

/// Six letters that tell this choice of a face's characters from another (9.6.4).
std::string tag_of(const Characters& characters) {
    std::uint64_t mixed = 14695981039346656037U;  // FNV-1a
    for (const auto& [code, character] : characters) mixed = (mixed ^ (code + 256U * character)) * 1099511628211U;
    std::string tag;
    for (int i = 0; i < 6; ++i, mixed /= 26) tag += static_cast<char>('A' + mixed % 26);
    return tag;
}

void write_font(PdfFile& file, Ref font, const Characters& characters, const FontFile& face, double cap_height) {
    const std::string name = tag_of(characters) + "+" + face.name();
    const std::string bytes = face.cut_down_to(characters);
    const Ref program = file.add_stream(fmt::format("/Length1 {}", bytes.size()), bytes);
    // Symbolic: its codes are its own.
    const Ref descriptor = file.add(
        fmt::format("<</Type/FontDescriptor/FontName/{}/Flags 4/ItalicAngle 0/StemV 80/CapHeight {}{}/FontFile2 {}>>",
                    name, std::lround(cap_height * 1000), face.extents(), named(program)));
    file.put(font, fmt::format("<</Type/Font/Subtype/TrueType/BaseFont/{}/FirstChar {}/LastChar {}/Widths[{}]"
                               "/FontDescriptor {}/ToUnicode {}>>",
                               name, characters.begin()->first, characters.rbegin()->first, widths_of(characters, face),
                               named(descriptor), named(file.add_stream("", map_to_text(characters)))));
}

}  // namespace

std::vector<Ref> reserve_fonts(PdfFile& file, const FaceCodes& codes) {
    std::vector<Ref> fonts;
    for (std::size_t face = 0; face < codes.size(); ++face)
        for (std::size_t font = 0; font < codes[face].fonts().size(); ++font) {
            const std::size_t number = font_number(static_cast<page::Face>(face), font);
            if (fonts.size() <= number) fonts.resize(number + 1);
            fonts[number] = file.reserve();
        }
    return fonts;
}

void write_fonts(PdfFile& file, const std::vector<Ref>& fonts, const FaceCodes& codes, const fonts::Faces& faces) {
    for (std::size_t i = 0; i < codes.size(); ++i) {
        if (codes[i].fonts().empty()) continue;
        const auto face = static_cast<page::Face>(i);
        const FontFile opened(faces.bytes(face));
        for (std::size_t font = 0; font < codes[i].fonts().size(); ++font)
            write_font(file, fonts.at(font_number(face, font)), codes[i].fonts()[font], opened, faces.cap_height(face));
    }
}

}  // namespace kerfpacket::output
