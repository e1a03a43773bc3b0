#pragma once
// libharu's fonts put right: text that can be copied out, figures that ISO 19005 asks for.

#include <vector>

#include "output/haru.h"
#include "output/qpdf.h"
#include "page/document.h"

namespace kerfpacket::output {

/// Repairs every font of every page: the map to text, the height of capitals, the set of characters that part 1
/// of ISO 19005 asks for (6.3.5), and part 3 does not.
void repair_fonts(QPDF& pdf, const page::Document& document, const std::vector<EmbeddedFont>& fonts, int part);

}  // namespace kerfpacket::output
