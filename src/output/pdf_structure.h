#pragma once
// The logical structure of the pages (ISO 32000-1, 14.7 and 14.8), by libqpdf.

#include <cstddef>
#include <vector>

#include "output/qpdf.h"
#include "page/document.h"

namespace kerfpacket::output {

/// The standard structure type that stands for a part of a page: "H1", "TH".
const char* structure_type(page::Tag tag);

/// Adds the structure tree: every page a section of the document, its parts in the order to read them in. `marks` has
/// for every page the part that each of its marked runs belongs to, by the run's number. Returns for every page the
/// element that holds each of its parts; none for parts with nothing to read.
std::vector<std::vector<QPDFObjectHandle>> add_structure(QPDF& pdf, const page::Document& document,
                                                         const std::vector<std::vector<std::size_t>>& marks);

}  // namespace kerfpacket::output
