#pragma once
// What stands on a label.

#include <string>
#include <vector>

#include "plan/labels.h"
#include "sheets/layout/kit.h"

namespace kerfpacket::sheets {

struct LabelText {
    std::string tag;     ///< "A", "S/2", "OFFCUT": the largest on the label
    std::string what;    ///< "blank, 2 of 3"
    std::string length;  ///< "117-3/8 in"
    std::vector<std::string> lines;
};

LabelText label_text(const plan::Label& label, const Kit& kit);

}  // namespace kerfpacket::sheets
