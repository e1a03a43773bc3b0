#pragma once
// A sheet that is handed to somebody is one page where it can be.

#include <iterator>
#include <utility>

#include "sheets/layout/draft.h"

namespace kerfpacket::sheets {

/// The sheet as `draw(Drafts&, const Kit&, white)` makes it: with less white where that saves a page, and where it is
/// one page then, with its text down to the size of small words; never smaller.
template <class Draw>
Drafts on_one_page(const Kit& kit, const Draw& draw) {
    Drafts best;
    const auto better = [&](const Kit& with, double white, bool only_one) {
        Drafts made;
        draw(made, with, white);
        if (only_one ? made.size() == 1 : best.empty() || made.size() < best.size()) best = std::move(made);
        return best.size() == 1;
    };
    for (const double white : {1.0, 0.6, 0.3})
        if (better(kit, white, false)) return best;
    for (const double part : {0.5, 0.0}) {
        fonts::Style style = kit.style;
        style.text = style.small + (style.text - style.small) * part;
        const Kit smaller{kit.faces, kit.words, style, kit.second_words};
        if (better(smaller, 0.3, true)) return best;
    }
    return best;
}

/// The same, behind the pages that are there.
template <class Draw>
void add_on_one_page(Drafts& drafts, const Kit& kit, const Draw& draw) {
    Drafts made = on_one_page(kit, draw);
    std::move(made.begin(), made.end(), std::back_inserter(drafts));
}

}  // namespace kerfpacket::sheets
