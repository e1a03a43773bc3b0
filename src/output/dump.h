#pragma once
// The document as text: the golden that layout is reviewed by.

#include <string>

#include "page/folded.h"

namespace kerfpacket::output {

/// One line an item, in page order: role, geometry in mm to three decimals, text, face, size.
std::string dump(const page::Document& document);
/// The same of one whose pages wait folded.
std::string dump(const page::FoldedDocument& document);

}  // namespace kerfpacket::output
