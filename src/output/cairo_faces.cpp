#include "output/cairo_faces.h"

#include <memory>
#include <mutex>
#include <stdexcept>
#include <string>

#include <cairo-ft.h>
#include <fmt/format.h>
#include <ft2build.h>
#include FT_FREETYPE_H

#include "disk/calls.h"

namespace kerfpacket::output {
namespace {

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

/// Threads may draw at once, each with faces of its own, but not open or close one.
std::mutex opening;

void close_face(void* opened) {
    const std::scoped_lock lock(opening);
    const std::unique_ptr<Opened> owned(static_cast<Opened*>(opened));
    FT_Done_Face(owned->face);
}

/// The face owns all it needs.
CairoFace cairo_face(const std::string& bytes, const std::string& file) {
    static const cairo_user_data_key_t owner{};
    auto opened = std::make_unique<Opened>(Opened{bytes});
    // FreeType takes bytes; a char is one.
    const auto* const data = reinterpret_cast<const FT_Byte*>(opened->bytes.data());  // NOLINT(*-reinterpret-cast)
    {
        const std::scoped_lock lock(opening);
        if (FT_New_Memory_Face(freetype(), data, static_cast<FT_Long>(opened->bytes.size()), 0, &opened->face) != 0)
            throw disk::Failure(fmt::format("cannot read the font file {}", file));
    }
    CairoFace face(cairo_ft_font_face_create_for_ft_face(opened->face, FT_LOAD_NO_HINTING), cairo_font_face_destroy);
    if (cairo_font_face_set_user_data(face.get(), &owner, opened.get(), close_face) != CAIRO_STATUS_SUCCESS) {
        close_face(opened.release());
        throw std::runtime_error(fmt::format("cannot use the font file {}", file));
    }
    opened.release();  // NOLINT(*-unused-return-value): Cairo closes it
    return face;
}

}  // namespace

cairo_font_face_t* CairoFaces::get(page::Face face) {
    std::optional<CairoFace>& opened = opened_.at(static_cast<std::size_t>(face));
    if (!opened) opened = cairo_face(faces_.bytes(face), faces_.file(face).string());
    return opened->get();
}

}  // namespace kerfpacket::output
