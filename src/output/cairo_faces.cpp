#include "output/cairo_faces.h"

#include <memory>
#include <stdexcept>
#include <string>

#include <cairo-ft.h>
#include <fmt/format.h>
#include <ft2build.h>
#include FT_FREETYPE_H

#include "disk/read.h"

namespace kerfpacket::output {
namespace {

/// No face of ours comes near this.
constexpr std::size_t most_face_bytes = 16U << 20U;

/// A face, and the bytes that it is read from as long as it lives.
struct Opened {
    std::string bytes;
    FT_Face face = nullptr;
};

/// FreeType lives as long as the program: Cairo keeps faces in a cache of its own, past the end of any drawing.
FT_Library freetype() {
    static FT_Library library = [] {
        FT_Library started = nullptr;
        if (FT_Init_FreeType(&started) != 0) throw std::runtime_error("cannot start FreeType");
        return started;
    }();
    return library;
}

void close_face(void* opened) {
    const std::unique_ptr<Opened> owned(static_cast<Opened*>(opened));
    FT_Done_Face(owned->face);
}

}  // namespace

CairoFace cairo_face(const std::filesystem::path& file) {
    static const cairo_user_data_key_t owner{};
    auto opened = std::make_unique<Opened>();
    opened->bytes = disk::must_read(file, most_face_bytes);
    // FreeType takes bytes; a char is one.
    const auto* const data = reinterpret_cast<const FT_Byte*>(opened->bytes.data());  // NOLINT(*-reinterpret-cast)
    if (FT_New_Memory_Face(freetype(), data, static_cast<FT_Long>(opened->bytes.size()), 0, &opened->face) != 0)
        throw disk::Failure(fmt::format("cannot read the font file {}", file.string()));
    CairoFace face(cairo_ft_font_face_create_for_ft_face(opened->face, FT_LOAD_NO_HINTING), cairo_font_face_destroy);
    if (cairo_font_face_set_user_data(face.get(), &owner, opened.get(), close_face) != CAIRO_STATUS_SUCCESS) {
        FT_Done_Face(opened->face);
        throw std::runtime_error(fmt::format("cannot use the font file {}", file.string()));
    }
    opened.release();  // NOLINT(*-unused-return-value): Cairo closes it
    return face;
}

}  // namespace kerfpacket::output
