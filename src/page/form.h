#pragma once
// What can be filled in on the pages of a document: each blank has a name, a place and a word for who cannot see it.

#include <cstddef>
#include <string>
#include <vector>

#include "geom/path.h"

namespace kerfpacket::page {

enum class FieldKind {
    line,    ///< one line of text
    notes,   ///< many lines
    one_of,  ///< one of several boxes is ticked
    hidden,  ///< says what form it is; nobody sees or fills it
};

/// Where a field is filled in: the blank itself, or one of the boxes.
struct FieldPlace {
    geom::Rect area;
    std::string word{};  ///< of a box: the value of the field when it is ticked
    std::string tip{};   ///< of a box: what it stands for
};

struct FormField {
    std::string name;  ///< letters, digits and hyphens, its own in the whole document
    std::string tip;   ///< what belongs here, whole, in the language of the page
    FieldKind kind = FieldKind::line;
    std::size_t page = 0;  ///< index into Document::pages
    std::size_t node = 0;  ///< the part of the page that its label is read with
    int most = 24;         ///< characters; of text alone
    std::vector<FieldPlace> places;
    std::string value{};  ///< what stands there beforehand
};

struct Form {
    std::vector<FormField> fields;  ///< in the order to read and fill them in
};

}  // namespace kerfpacket::page
