#pragma once
// The document as text: the golden that layout is reviewed by.

#include <string>

#include "page/document.h"

namespace kerfpacket::output {

/// One line an item, in page order: role, geometry in mm to three decimals, text, face, size.
std::string dump(const page::Document& document);

}  // namespace kerfpacket::output
