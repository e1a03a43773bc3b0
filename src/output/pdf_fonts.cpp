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

/// The upper bytes of all characters set on the pages.
std::set<unsigned> upper_bytes(const page::Document& document) {
    std::set<unsigned> found;
    for (const page::Page& page : document.pages)
        for (const page::Item& item : page.items)
            if (const auto* text = std::get_if<page::TextItem>(&item))
                for (std::string_view rest = text->text; !rest.empty();)
                    found.insert(static_cast<unsigned>(fonts::take_character(rest).value()) >> 8U);
    return found;
}

/// libharu's character codes are UTF-16 code units, so the map back to text is the identity. A range of a CMap may
/// not cross a 256 boundary, and 100 ranges are the most in a block (Adobe Technical Note 5014).
std::string identity_cmap(const page::Document& document) {
    const std::set<unsigned> blocks = upper_bytes(document);
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

void set_cap_height(Object descriptor, const std::vector<EmbeddedFont>& fonts) {
    const std::string name = descriptor.getKey("/FontName").getName();
    const auto known =
        std::find_if(fonts.begin(), fonts.end(), [&](const EmbeddedFont& f) { return name.ends_with("+" + f.name); });
    if (known == fonts.end()) throw std::runtime_error("the PDF has an unknown font " + name);
    descriptor.replaceKey("/CapHeight", Object::newInteger(std::llround(known->cap_height * 1000)));
}

/// A font of one-byte codes needs no map to text: its encoding is one (ISO 32000-1, 9.10.2).
void repair_font(Object font, const Object& to_unicode, const std::vector<EmbeddedFont>& fonts) {
    if (!font.getKey("/Subtype").isNameAndEquals("/Type0"))
        return set_cap_height(font.getKey("/FontDescriptor"), fonts);
    font.replaceKey("/ToUnicode", to_unicode);
    Object descendant = font.getKey("/DescendantFonts").getArrayItem(0);
    descendant.getKey("/CIDSystemInfo").replaceKey("/Ordering", Object::newString("Identity"));
    set_cap_height(descendant.getKey("/FontDescriptor"), fonts);
}

}  // namespace

void repair_fonts(QPDF& pdf, const page::Document& document, const std::vector<EmbeddedFont>& fonts) {
    const Object to_unicode = packed_stream(pdf, identity_cmap(document));
    std::set<QPDFObjGen> repaired;
    for (Object page : pdf.getAllPages()) {
        Object page_fonts = page.getKey("/Resources").getKey("/Font");
        if (!page_fonts.isDictionary()) continue;
        for (auto& [name, font] : page_fonts.getDictAsMap())
            if (repaired.insert(font.getObjGen()).second) repair_font(font, to_unicode, fonts);
    }
}

}  // namespace kerfpacket::output
