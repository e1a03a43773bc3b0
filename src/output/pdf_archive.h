#pragma once
// What makes a PDF one that can be kept: ISO 19005 (PDF/A).

#include <string>
#include <vector>

#include "output/pdf.h"
#include "output/pdf_file.h"

namespace kerfpacket::output {

/// A day of a document, YYYY-MM-DD, as a PDF writes a date (ISO 32000-1, 7.9.4).
std::string pdf_date(const std::string& day);

/// Says in XMP what the document is, the same as its information dictionary does, and which part of ISO 19005 it
/// follows: 1 or 3, level B; or none, 0.
Ref add_metadata(PdfFile& file, const page::Document& document, int part);

/// What the black and white of the pages mean, an ICC profile of gray: an entry of the catalogue.
std::string output_intents(PdfFile& file, const std::string& profile);

/// Embeds the files; the entries of the catalogue that name them and associate them with the whole document.
std::string attached(PdfFile& file, const page::Document& document, const std::vector<Attachment>& attachments);

}  // namespace kerfpacket::output
