#pragma once
// The packet's faces for Cairo. Cairo wants FreeType's own handle of a font file, so FreeType is used here as well as
// in fonts/; no other file of output/ needs it.

#include <filesystem>
#include <memory>

#include <cairo.h>

namespace kerfpacket::output {

using CairoFace = std::unique_ptr<cairo_font_face_t, decltype(&cairo_font_face_destroy)>;

/// A font file as a Cairo face, which owns all it needs. Throws std::runtime_error in plain words.
CairoFace cairo_face(const std::filesystem::path& file);

}  // namespace kerfpacket::output
