#pragma once
// Ways through the pages of a document (ISO 32000-1, 12.3).

#include <string>
#include <vector>

#include "output/pdf_file.h"
#include "page/document.h"

namespace kerfpacket::output {

/// The bookmarks; returns their root.
Ref add_outline(PdfFile& file, const page::Document& document, const std::vector<Ref>& pages);

/// What a reader says of a link: the name of the sheet that it leads to, and its page.
std::string told_of(const page::Document& document, std::size_t page);

}  // namespace kerfpacket::output
