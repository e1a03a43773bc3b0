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
    const fonts::Words* second_words = nullptr;  ///< a second language: the safety card again, the checklist in both

    /// The same in the second language alone; there must be one.
    Kit second() const { return {faces, *second_words, style}; }
};

}  // namespace kerfpacket::sheets
