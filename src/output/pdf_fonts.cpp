#include "output/pdf_fonts.h"

#include <algorithm>
#include <cmath>
#include <set>
#include <stdexcept>
#include <string>
#include <string_view>
#include <variant>

#include <fmt/format.h>

#include "fonts/utf8.h"
#include "measure/require.h"
#include "output/pdf_archive.h"

namespace kerfpacket::output {
namespace {

using Object = QPDFObjectHandle;

/// All characters set in a face.
std::set<char32_t> characters(const page::Document& document, page::Face face) {
    std::set<char32_t> found;
    for (const page::Page& page : document.pages)
        for (const page::Item& item : page.items)
            if (const auto* text = std::get_if<page::TextItem>(&item); text != nullptr && text->face == face)
                for (std::string_view rest = text->text; !rest.empty();)
                    found.insert(fonts::take_character(rest).value());
    return found;
}

/// libharu's character codes are UTF-16 code units, so the map back to text is the identity. A range of a CMap may
/// not cross a 256 boundary, and 100 ranges are the most in a block (Adobe Technical Note 5014).
std::string identity_cmap(const std::set<char32_t>& used) {
    std::set<unsigned> blocks;
    for (const char32_t c : used) blocks.insert(static_cast<unsigned>(c) >> 8U);
    measure::require(blocks.size() <= 100, "the text keeps to a hundred blocks of 256 characters");
    std::string map =
        "/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n"
        "/CIDSystemInfo << /Registry (Adobe) /Ordering (UCS) /Supplement 0 >> def\n"
        "/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n"
        "1 begincodespacerange\n<0000> <FFFF>\nendcodespacerange\n";
    map += fmt::format("{} beginbfrange\n", blocks.size());
    for (const unsigned block : blocks) map += fmt::format("<{0:02X}00> <{0:02X}FF> <{0:02X}00>\n", block);
    return map + "endbfrange\nendcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n";
}

/// One bit a character code, the highest first (ISO 32000-1, table 124). Code 0 is the box for a missing glyph.
std::string cid_set(const std::set<char32_t>& used) {
    std::string bits(*used.rbegin() / 8 + 1, '\0');
    const auto set = [&](char32_t c) { bits[c / 8] = static_cast<char>(bits[c / 8] | (0x80 >> (c % 8))); };
    set(0);
    for (const char32_t c : used) set(c);
    return bits;
}

const EmbeddedFont& known_font(Object descriptor, const std::vector<EmbeddedFont>& fonts) {
    const std::string name = descriptor.getKey("/FontName").getName();
    const auto known =
        std::find_if(fonts.begin(), fonts.end(), [&](const EmbeddedFont& f) { return name.ends_with("+" + f.name); });
    if (known == fonts.end()) throw std::runtime_error("the PDF has an unknown font " + name);
    return *known;
}

/// A font of one-byte codes needs no map to text: its encoding is one (ISO 32000-1, 9.10.2).
void repair_font(QPDF& pdf, Object font, const page::Document& document, const std::vector<EmbeddedFont>& fonts,
                 int part) {
    const bool wide = font.getKey("/Subtype").isNameAndEquals("/Type0");
    Object one = wide ? font.getKey("/DescendantFonts").getArrayItem(0) : font;
    Object descriptor = one.getKey("/FontDescriptor");
    const EmbeddedFont& known = known_font(descriptor, fonts);
    descriptor.replaceKey("/CapHeight", Object::newInteger(std::llround(known.cap_height * 1000)));
    if (!wide) return;
    const std::set<char32_t> used = characters(document, known.face);
    font.replaceKey("/ToUnicode", packed_stream(pdf, identity_cmap(used)));
    one.getKey("/CIDSystemInfo").replaceKey("/Ordering", Object::newString("Identity"));
    if (part == 1) descriptor.replaceKey("/CIDSet", packed_stream(pdf, cid_set(used)));
}

}  // namespace

void repair_fonts(QPDF& pdf, const page::Document& document, const std::vector<EmbeddedFont>& fonts, int part) {
    std::set<QPDFObjGen> repaired;
    for (Object page : pdf.getAllPages()) {
        Object page_fonts = page.getKey("/Resources").getKey("/Font");
        if (!page_fonts.isDictionary()) continue;
        for (auto& [name, font] : page_fonts.getDictAsMap())
            if (repaired.insert(font.getObjGen()).second) repair_font(pdf, font, document, fonts, part);
    }
}

}  // namespace kerfpacket::output
