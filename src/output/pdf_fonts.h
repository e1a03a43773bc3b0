#pragma once
// The faces of a document as fonts of its file, each with the characters that are used and no other.

#include <vector>

#include "fonts/faces.h"
#include "output/pdf_file.h"
#include "output/pdf_page.h"

namespace kerfpacket::output {

/// Numbers for the fonts, by font_number: 0 where the document has none of it.
std::vector<Ref> reserve_fonts(PdfFile& file, const FaceCodes& codes);
/// Writes them, once it is known that no page comes with a further character.
void write_fonts(PdfFile& file, const std::vector<Ref>& fonts, const FaceCodes& codes, const fonts::Faces& faces);

}  // namespace kerfpacket::output
