#pragma once
// A font file opened: its figures, and as much of it as a document needs.

#include <map>
#include <memory>
#include <string>
#include <type_traits>

#include <ft2build.h>
#include FT_FREETYPE_H

namespace kerfpacket::output {

/// Lengths are in thousandths of the type size, as a PDF has them, cut off to whole ones.
class FontFile {
public:
    /// Throws std::runtime_error when the bytes are no TrueType file. They must outlive the object.
    explicit FontFile(const std::string& bytes);

    std::string name() const { return FT_Get_Postscript_Name(face_.get()); }
    /// 0 is the box for a missing character.
    unsigned glyph(char32_t character) const { return character == 0 ? 0 : FT_Get_Char_Index(face_.get(), character); }
    long width(char32_t character) const;
    /// "/FontBBox[...]/Ascent ... /Descent ...", of a font descriptor (ISO 32000-1, table 122).
    std::string extents() const;

    /// A TrueType file of these characters alone, each by its code (9.6.6.4: a symbolic font).
    std::string cut_down_to(const std::map<unsigned char, char32_t>& characters) const;

private:
    std::string table(FT_ULong tag) const;

    struct Done {
        void operator()(FT_Library library) const { FT_Done_FreeType(library); }
        void operator()(FT_Face face) const { FT_Done_Face(face); }
    };
    std::unique_ptr<std::remove_pointer_t<FT_Library>, Done> library_;
    std::unique_ptr<std::remove_pointer_t<FT_Face>, Done> face_;
};

}  // namespace kerfpacket::output
