#pragma once
// Pictures of pages through Cairo.

#include <string>

#include "fonts/faces.h"
#include "page/document.h"

namespace kerfpacket::output {

/// One page as a grey PNG at `dpi`; throws std::runtime_error when a page is over 32767 pixels.
std::string png(const page::Page& page, const fonts::Faces& faces, double dpi);
/// One page as SVG, in points.
std::string svg(const page::Page& page, const fonts::Faces& faces);

}  // namespace kerfpacket::output
