#pragma once
// The packet as PDF.

#include <string>
#include <vector>

#include "disk/side_by_side.h"
#include "fonts/faces.h"
#include "page/document.h"
#include "page/folded.h"
#include "page/form.h"

namespace kerfpacket::output {

/// A text file that travels inside the PDF (ISO 32000-1, 7.11.4; ISO 19005-3, 6.8).
struct Attachment {
    std::string name;  ///< file name, without a folder
    std::string text;  ///< UTF-8
    std::string description;
    std::string relationship;  ///< to the document: "Source", "Data", "Alternative", "Supplement" or "Unspecified"
};

/// The whole file in memory. The same document gives the same bytes, always, on however many threads. Without
/// attachments it is PDF/A-1b, with them (they need the document's date) it is built to the rules of PDF/A-3b, and
/// sealed. Throws std::runtime_error in plain words when a library fails.
std::string pdf(const page::Document& document, const fonts::Faces& faces,
                const std::vector<Attachment>& attachments = {}, unsigned threads = disk::cores());

/// The same bytes of one whose pages wait folded. Each is let go when it is written.
std::string pdf(page::FoldedDocument&& document, const fonts::Faces& faces,
                const std::vector<Attachment>& attachments = {}, unsigned threads = disk::cores());

/// The same of a document that can be filled in: no PDF/A, as nothing is that a viewer writes into. Not sealed.
std::string form_pdf(const page::Document& document, const page::Form& form, const fonts::Faces& faces);

}  // namespace kerfpacket::output
