#pragma once
// The packet as PDF: written by libharu, finished by libqpdf.

#include <string>

#include "fonts/faces.h"
#include "page/document.h"

namespace kerfpacket::output {

/// The whole file in memory. The same document gives the same bytes, always. Throws std::runtime_error in plain
/// words when a library fails.
std::string pdf(const page::Document& document, const fonts::Faces& faces);

}  // namespace kerfpacket::output
