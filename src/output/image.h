#pragma once
// Pictures of pages through Cairo.

#include <cstddef>
#include <functional>
#include <string>

#include "disk/side_by_side.h"
#include "fonts/faces.h"
#include "page/document.h"

namespace kerfpacket::output {

/// One page as a grey PNG at `dpi`; throws std::runtime_error when a page is over 32767 pixels.
std::string png(const page::Page& page, const fonts::Faces& faces, double dpi);
/// The same of every page, drawn side by side and taken in order.
using TakePicture = std::function<void(std::size_t page, std::string png)>;
void each_png(const page::Document& document, const fonts::Faces& faces, double dpi, const TakePicture& take,
              unsigned threads = disk::cores());
/// All pages of a document small on one grey PNG, row by row, each with its number and its sheet under it. At `dpi` a
/// page that is longer than others, from a roll, is drawn smaller. Throws std::runtime_error when the picture is over
/// 32767 pixels.
std::string contact_sheet(const page::Document& document, const fonts::Faces& faces, double dpi);
/// One page as SVG, in points.
std::string svg(const page::Page& page, const fonts::Faces& faces);

}  // namespace kerfpacket::output
