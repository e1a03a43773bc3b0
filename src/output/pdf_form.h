#pragma once
// Fields laid over the pages (ISO 32000-1, 12.7): what is paper is a form too.

#include <string>
#include <vector>

#include "output/qpdf.h"
#include "page/document.h"
#include "page/form.h"

namespace kerfpacket::output {

/// Adds the fields, each a widget on its page and an element of the structure, in the part that its label is read
/// with (behind it, where that is a figure, whose parts nobody reads). `face` is the TrueType file that is typed in;
/// `elements` as `add_structure` returns them. No script, no action; nothing is left for a viewer to draw first.
void add_form(QPDF& pdf, const page::Document& document, const page::Form& form, const std::string& face,
              const std::vector<std::vector<QPDFObjectHandle>>& elements);

}  // namespace kerfpacket::output
