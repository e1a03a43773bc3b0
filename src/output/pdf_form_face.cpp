#include "output/pdf_form_face.h"

#include <array>
#include <memory>
#include <stdexcept>

#include <fmt/format.h>
#include <ft2build.h>
#include FT_FREETYPE_H

#include "output/pdf_archive.h"
#include "output/win_ansi.h"

namespace kerfpacket::output {
namespace {

using Object = QPDFObjectHandle;

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

constexpr unsigned first_code = 0x20, last_code = 0xFF;

char32_t character_of(unsigned code) {
    for (const Different& one : different)
        if (one.code == code) return one.character;
    return win_ansi_character(code);
}

/// The face opened, for its figures; in thousandths of the type size.
class Opened {
public:
    explicit Opened(const std::string& bytes) {
        FT_Library library = nullptr;
        if (FT_Init_FreeType(&library) != 0) throw std::bad_alloc();
        library_.reset(library);
        FT_Face face = nullptr;
        const auto* data = reinterpret_cast<const FT_Byte*>(bytes.data());  // NOLINT(*-reinterpret-cast): bytes
        if (FT_New_Memory_Face(library, data, static_cast<FT_Long>(bytes.size()), 0, &face) != 0)
            throw std::runtime_error("the face of forms is no font file: build the program again");
        face_.reset(face);
    }

    long thousandths(long units) const { return units * 1000 / face_->units_per_EM; }
    long width(char32_t character) const {
        const FT_UInt glyph = character == 0 ? 0 : FT_Get_Char_Index(face_.get(), character);
        if (FT_Load_Glyph(face_.get(), glyph, FT_LOAD_NO_SCALE) != 0)
            throw std::runtime_error("the face of forms is damaged: build the program again");
        return thousandths(face_->glyph->metrics.horiAdvance);
    }
    const FT_FaceRec& face() const { return *face_; }

private:
    struct Done {
        void operator()(FT_Library library) const { FT_Done_FreeType(library); }
        void operator()(FT_Face face) const { FT_Done_Face(face); }
    };
    std::unique_ptr<std::remove_pointer_t<FT_Library>, Done> library_;
    std::unique_ptr<std::remove_pointer_t<FT_Face>, Done> face_;
};

}  // namespace

Object form_face(QPDF& pdf, const std::string& bytes) {
    const Opened opened(bytes);
    const FT_FaceRec& face = opened.face();
    const auto t = [&](long units) { return opened.thousandths(units); };
    std::string widths, differences;
    for (unsigned code = first_code; code <= last_code; ++code)
        widths += fmt::format("{} ", opened.width(character_of(code)));
    for (const Different& one : different) differences += fmt::format("{} /{} ", one.code, one.name);
    // DejaVu Sans: its capitals are 729/1000 high.
    Object descriptor = Object::parse(
        fmt::format("<< /Type /FontDescriptor /FontName /AAAAAA+DejaVuSans /Flags 32 /ItalicAngle 0 /StemV 80"
                    " /CapHeight 729 /FontBBox [{} {} {} {}] /Ascent {} /Descent {} >>",
                    t(face.bbox.xMin), t(face.bbox.yMin), t(face.bbox.xMax), t(face.bbox.yMax), t(face.ascender),
                    t(face.descender)));
    Object file = packed_stream(pdf, bytes);
    file.getDict().replaceKey("/Length1", Object::newInteger(static_cast<long long>(bytes.size())));
    descriptor.replaceKey("/FontFile2", file);
    Object font = Object::parse(fmt::format(
        "<< /Type /Font /Subtype /TrueType /BaseFont /AAAAAA+DejaVuSans /FirstChar {} /LastChar {} /Encoding << /Type"
        " /Encoding /BaseEncoding /WinAnsiEncoding /Differences [{}] >> /Widths [{}] >>",
        first_code, last_code, differences, widths));
    font.replaceKey("/FontDescriptor", pdf.makeIndirectObject(descriptor));
    return pdf.makeIndirectObject(font);
}

}  // namespace kerfpacket::output
