#pragma once
// What every sheet is made with, besides the plan.

#include "fonts/faces.h"
#include "fonts/style.h"
#include "fonts/words.h"

namespace kerfpacket::sheets {

struct Kit {
    const fonts::Faces& faces;
    const fonts::Words& words;
    const fonts::Style& style;
};

}  // namespace kerfpacket::sheets
