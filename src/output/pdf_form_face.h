#pragma once
// The face that is typed in.

#include <string>

#include "output/qpdf.h"

namespace kerfpacket::output {

/// A simple TrueType font of these bytes (ISO 32000-1, 9.6.3): WinAnsiEncoding, and on codes that nobody types the
/// eighths, primes, fraction line and minus that measurements have. Throws std::runtime_error when it is no face.
QPDFObjectHandle form_face(QPDF& pdf, const std::string& bytes);

}  // namespace kerfpacket::output
