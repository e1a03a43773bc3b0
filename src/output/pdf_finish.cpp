#include "output/pdf_finish.h"

#include <algorithm>
#include <cmath>
#include <exception>
#include <set>
#include <stdexcept>
#include <string_view>
#include <variant>

#include <fmt/format.h>

#include "fonts/utf8.h"
#include "measure/require.h"
#include "output/qpdf.h"

namespace kerfpacket::output {
namespace {

using Object = QPDFObjectHandle;

/// The pages keep the numbers they have in the whole packet (ISO 32000-1, 12.4.2): a range of labels begins where the
/// numbers do not go on by one.
Object page_labels(const page::Document& document) {
    Object ranges = Object::newArray();
    std::size_t expected = 0;
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
        const std::size_t number = document.pages[i].number != 0 ? document.pages[i].number : i + 1;
        if (number != expected) {
            ranges.appendItem(Object::newInteger(static_cast<long long>(i)));
            ranges.appendItem(Object::parse(number == 1 ? "<< /S /D >>" : fmt::format("<< /S /D /St {} >>", number)));
        }
        expected = number + 1;
    }
    Object labels = Object::newDictionary();
    labels.replaceKey("/Nums", ranges);
    return labels;
}

void set_catalogue(QPDF& pdf, const page::Document& document) {
    Object root = pdf.getRoot();
    root.replaceKey("/ViewerPreferences", Object::parse("<< /PrintScaling /None /Enforce [/PrintScaling]"
                                                        " /PickTrayByPDFSize true /DisplayDocTitle true >>"));
    root.replaceKey("/PageLabels", page_labels(document));
    root.replaceKey("/Lang", Object::newUnicodeString(document.language));
}

void set_information(QPDF& pdf, const page::Document& document) {
    Object info = Object::newDictionary();
    info.replaceKey("/Title", Object::newUnicodeString(document.title));
    if (!document.subject.empty()) info.replaceKey("/Subject", Object::newUnicodeString(document.subject));
    info.replaceKey("/Producer", Object::newUnicodeString("kerfpacket " KERFPACKET_VERSION));
    if (!document.date.empty()) {
        std::string day = document.date;
        std::erase(day, '-');
        const Object date = Object::newString("D:" + day + "000000Z");
        info.replaceKey("/CreationDate", date);
        info.replaceKey("/ModDate", date);
    }
    pdf.getTrailer().replaceKey("/Info", pdf.makeIndirectObject(info));
}

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

void repair_pages(QPDF& pdf, const page::Document& document, const std::vector<EmbeddedFont>& fonts) {
    const Object to_unicode = pdf.newStream(identity_cmap(document));
    std::set<QPDFObjGen> repaired;
    for (Object page : pdf.getAllPages()) {
        Object page_fonts = page.getKey("/Resources").getKey("/Font");
        if (page_fonts.isDictionary())
            for (auto& [name, font] : page_fonts.getDictAsMap())
                if (repaired.insert(font.getObjGen()).second) repair_font(font, to_unicode, fonts);
        Object annotations = page.getKey("/Annots");
        if (!annotations.isArray()) continue;
        for (Object annotation : annotations.getArrayAsVector()) annotation.replaceKey("/F", Object::newInteger(4));
    }
}

std::string write(QPDF& pdf) {
    QPDFWriter writer(pdf);
    writer.setOutputMemory();
    writer.setDeterministicID(true);
    writer.setNewlineBeforeEndstream(true);
    writer.setObjectStreamMode(qpdf_o_generate);
    // Streams pass as libharu compressed them: libqpdf would unpack and pack them all again, most of the finish's time.
    writer.setCompressStreams(false);
    writer.setMinimumPDFVersion("1.7");
    writer.write();
    const auto buffer = writer.getBufferSharedPointer();
    return {reinterpret_cast<const char*>(buffer->getBuffer()), buffer->getSize()};  // NOLINT(*-reinterpret-cast)
}

}  // namespace

std::string finish_pdf(const std::string& raw, const page::Document& document, const std::vector<EmbeddedFont>& fonts) {
    try {
        QPDF pdf;
        pdf.setSuppressWarnings(true);
        pdf.processMemoryFile("the PDF", raw.data(), raw.size());
        set_catalogue(pdf, document);
        set_information(pdf, document);
        repair_pages(pdf, document, fonts);
        std::string bytes = write(pdf);
        if (pdf.anyWarnings()) throw std::runtime_error(pdf.getWarnings().front().what());
        return bytes;
    } catch (const std::exception& error) {
        throw std::runtime_error(fmt::format("the PDF library failed while finishing the PDF: {}", error.what()));
    }
}

}  // namespace kerfpacket::output
