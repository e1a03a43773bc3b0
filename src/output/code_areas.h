#pragma once
// A square code as rectangles of dark cells: what is told of it in a page.

#include <compare>
#include <vector>

#include "page/document.h"

namespace kerfpacket::output {

/// Dark cells, counted from the low left corner of the code.
struct CodeArea {
    std::size_t height, width, column, row;
    auto operator<=>(const CodeArea&) const = default;
};

/// The three squares by which a code is found (ISO/IEC 18004, 6.3.3), a dark square in a white ring in a dark one:
/// alike in all codes of a size, and they touch no other dark cell.
std::vector<CodeArea> finder_areas(const page::CodeItem& code);

/// All other dark cells: runs of rows that are alike are one area. In the order of their sizes they pack best.
std::vector<CodeArea> areas_but_finders(const page::CodeItem& code);

}  // namespace kerfpacket::output
