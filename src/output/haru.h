#pragma once
// libharu behind C++: its document with its errors told, its fonts, its numbers.

#include <array>
#include <cstddef>
#include <memory>
#include <string>
#include <type_traits>
#include <vector>

#include <hpdf.h>

#include "fonts/faces.h"
#include "page/document.h"

namespace kerfpacket::output {

using page::Face;
using page::Length;

/// A length in points for the file, rounded to 1/1000 (0.00035 mm): shorter numbers. libharu writes NaN without a word
/// and clamps at 32767, so a value that is not finite or too large is a Bug.
double rounded_points(Length value);
/// The same, cast to libharu's float; no arithmetic after it.
inline HPDF_REAL haru_points(Length value) { return static_cast<HPDF_REAL>(rounded_points(value)); }

/// libharu 2.3 cannot save a face whose cut-down tables end just where a block of its memory ends (4,096 bytes), which
/// depends on the characters used: one or another more, and it can.
struct FontOnABlockEnd {};

/// An open libharu document. libharu calls back on an error and then goes dead; the callback only records, and
/// `check` after each call throws std::runtime_error that says what was being done.
class HaruDocument {
public:
    HaruDocument();
    HaruDocument(const HaruDocument&) = delete;
    HaruDocument& operator=(const HaruDocument&) = delete;

    HPDF_Doc get() const { return document_.get(); }
    void check(const char* doing) const;
    /// The whole file, compressed. Throws FontOnABlockEnd where a face cannot be saved as it was used.
    std::string bytes() const;

private:
    struct Trouble {
        HPDF_STATUS error = 0;
        HPDF_STATUS detail = 0;
    };
    static void record(HPDF_STATUS error, HPDF_STATUS detail, void* trouble);

    Trouble trouble_;
    struct Free {
        void operator()(HPDF_Doc document) const { HPDF_Free(document); }
    };
    std::unique_ptr<std::remove_pointer_t<HPDF_Doc>, Free> document_;
};

/// How text is coded in the file: one byte a character (WinAnsiEncoding), or UTF-16 for what that cannot say.
enum class Coding { win_ansi, unicode };

/// A face as it went into the file.
struct EmbeddedFont {
    Face face = Face::regular;
    std::string name;       ///< libharu's name of the font
    double cap_height = 0;  ///< part of the type size
};

/// The faces of one document, each loaded when it is first used.
class HaruFonts {
public:
    HaruFonts(const HaruDocument& document, const fonts::Faces& faces) : document_(document), faces_(faces) {}

    HPDF_Font get(Face face, Coding coding);
    /// Puts the first `count` of some rare characters into every face of the file, unseen: asking for their width does.
    void take_along(std::size_t count);
    const fonts::Faces& faces() const { return faces_; }
    const std::vector<EmbeddedFont>& embedded() const { return embedded_; }

private:
    /// libharu's name of a face's file, read when it is first asked for.
    const char* name_of(Face face);

    const HaruDocument& document_;
    const fonts::Faces& faces_;
    std::array<const char*, 4> names_{};
    std::array<std::array<HPDF_Font, 2>, 4> loaded_{};
    std::vector<EmbeddedFont> embedded_;
};

}  // namespace kerfpacket::output
