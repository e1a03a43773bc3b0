#pragma once
// The packet's faces for Cairo. Cairo wants FreeType's own handle of a font file, so FreeType is used here as well as
// in fonts/; no other file of output/ needs it.

#include <array>
#include <memory>
#include <optional>

#include <cairo.h>

#include "fonts/faces.h"

namespace kerfpacket::output {

using CairoFace = std::unique_ptr<cairo_font_face_t, decltype(&cairo_font_face_destroy)>;

/// The faces of one thread's drawings, each opened when it is first used: Cairo keeps the letters that it has drawn
/// with the face.
class CairoFaces {
public:
    /// `faces` must outlive the object.
    explicit CairoFaces(const fonts::Faces& faces) : faces_(faces) {}

    const fonts::Faces& faces() const { return faces_; }
    /// Throws std::runtime_error in plain words.
    cairo_font_face_t* get(page::Face face);

private:
    const fonts::Faces& faces_;
    std::array<std::optional<CairoFace>, 4> opened_;
};

}  // namespace kerfpacket::output
