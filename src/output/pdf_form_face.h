#pragma once
// The face that is typed in.

#include <string>

#include "output/pdf_file.h"

namespace kerfpacket::output {

/// A simple TrueType font of these bytes (ISO 32000-1, 9.6.3): WinAnsiEncoding, and on codes that nobody types the
/// eighths, primes, fraction line and minus that measurements have. Throws std::runtime_error when it is no face.
Ref form_face(PdfFile& file, const std::string& bytes);

}  // namespace kerfpacket::output
