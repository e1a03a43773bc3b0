#include "output/cairo_faces.h"

#include <stdexcept>

#include <cairo-ft.h>
#include <fmt/format.h>
#include <ft2build.h>
#include FT_FREETYPE_H

namespace kerfpacket::output {
namespace {

/// FreeType lives as long as the program: Cairo keeps faces in a cache of its own, past the end of any drawing.
FT_Library freetype() {
    static FT_Library library = [] {
        FT_Library started = nullptr;
        if (FT_Init_FreeType(&started) != 0) throw std::runtime_error("cannot start FreeType");
        return started;
    }();
    return library;
}

void close_face(void* face) { FT_Done_Face(static_cast<FT_Face>(face)); }

}  // namespace

CairoFace cairo_face(const std::filesystem::path& file) {
    static const cairo_user_data_key_t owner{};
    FT_Face opened = nullptr;
    if (FT_New_Face(freetype(), file.c_str(), 0, &opened) != 0)
        throw std::runtime_error(fmt::format("cannot read the font file {}", file.string()));
    CairoFace face(cairo_ft_font_face_create_for_ft_face(opened, FT_LOAD_NO_HINTING), cairo_font_face_destroy);
    if (cairo_font_face_set_user_data(face.get(), &owner, opened, close_face) != CAIRO_STATUS_SUCCESS) {
        close_face(opened);
        throw std::runtime_error(fmt::format("cannot use the font file {}", file.string()));
    }
    return face;
}

}  // namespace kerfpacket::output
