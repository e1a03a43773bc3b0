#pragma once
// The items of one page as the operators of a PDF (ISO 32000-1, 8 and 9).

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <vector>

#include "output/codes.h"
#include "page/placing.h"

namespace kerfpacket::output {

using page::Length;
using page::Point;

/// The codes of each face.
using FaceCodes = std::array<Codes, page::all_faces.size()>;
/// The number of a face's font among the fonts of a file, "/F6" by name.
inline std::size_t font_number(page::Face face, std::size_t font) {
    return static_cast<std::size_t>(face) + page::all_faces.size() * font;
}

/// A page as it goes into the file: its own content, and behind it what may be alike on other pages.
struct Drawn {
    std::string content;             ///< deflated
    std::string frame;               ///< as it is
    std::vector<std::size_t> marks;  ///< of each marked run, by its number (MCID): the part of the page it belongs to
    std::vector<bool> fonts;         ///< by font_number: those that it is set in
    std::vector<const page::LinkItem*> links;  ///< in the order of drawing
};
Drawn drawn(const page::Page& page, const FaceCodes& codes);

}  // namespace kerfpacket::output
