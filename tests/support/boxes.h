#pragma once
// The room that texts take on a page, and whether they get in each other's way.

#include <algorithm>
#include <sstream>
#include <string>
#include <vector>

#include "kit.h"

namespace kerfpacket::tests {

/// Whether a text stands level or upright, so that its room is a rectangle of the page.
inline bool is_square(const page::TextItem& text) {
    const double quarters = text.angle.degrees() / 90;
    return std::abs(quarters - std::round(quarters)) < 1e-9;
}

/// Room of a text's ink: its whole advance, down to its lowest letter, up to a capital's height.
inline geom::Rect box_of(const page::TextItem& text) {
    const bool deep = text.text.find_first_of("gjpqy,;|()Q_") != std::string::npos;
    const measure::Length low = text.size * (deep ? -0.2 : 0.0);
    const geom::Point a = in_text(text, {}, low);
    geom::Rect box{a, a};
    for (const geom::Point p : {in_text(text, text.advance, low), in_text(text, {}, text.size * 0.73),
                                in_text(text, text.advance, text.size * 0.73)})
        box = geom::united(box, {p, p});
    return box;
}

/// Whether two rectangles share more than an edge.
inline bool overlap(const geom::Rect& a, const geom::Rect& b) {
    const measure::Length touch = 0.05_pt;
    return a.low.x < b.high.x - touch && b.low.x < a.high.x - touch && a.low.y < b.high.y - touch &&
           b.low.y < a.high.y - touch;
}

inline std::string placed(const page::TextItem& text) {
    std::ostringstream out;
    out << '"' << text.text << "\" at " << text.anchor.x.points() << "," << text.anchor.y.points() << " pt";
    return out.str();
}

/// What is wrong with the texts of a page, one line each: two that overlap, one nearer an edge than 18 pt (of a roll,
/// which may be narrow: `upright` to the lower and upper edge, `sideways` to the others), one under 8 pt, one painted
/// over by a white ground that came later, one in the four white cells around a code (ISO/IEC 18004).
inline std::vector<std::string> text_faults(const page::Page& page, measure::Length upright = 18_pt,
                                            measure::Length sideways = 18_pt) {
    std::vector<std::string> faults;
    const geom::Rect room{{sideways, upright}, {page.width - sideways, page.height - upright}};
    std::vector<const page::TextItem*> seen;
    std::vector<geom::Rect> codes;
    for (const page::Item& item : page.items)
        if (const auto* code = std::get_if<page::CodeItem>(&item))
            codes.push_back(code->area.grown(code->area.width() * 4 / static_cast<double>(code->side)));
    for (const page::Item& item : page.items) {
        if (const auto* path = std::get_if<page::PathItem>(&item)) {
            if (!path->filled || path->ink != page::Ink::white) continue;
            for (const auto* before : seen)
                if (overlap(box_of(*before), path->path.bounds()))
                    faults.push_back(placed(*before) + " is painted over");
        }
        const auto* text = std::get_if<page::TextItem>(&item);
        if (text == nullptr) continue;
        const geom::Rect box = box_of(*text);
        if (!room.contains(box.low) || !room.contains(box.high)) faults.push_back(placed(*text) + " leaves the page");
        if (text->size < 8_pt) faults.push_back(placed(*text) + " is under 8 pt");
        for (const geom::Rect& code : codes)
            if (overlap(box, code)) faults.push_back(placed(*text) + " is too near the code");
        if (!is_square(*text)) continue;
        for (const auto* before : seen)
            if (overlap(box, box_of(*before))) faults.push_back(placed(*text) + " overlaps " + placed(*before));
        seen.push_back(text);
    }
    return faults;
}

}  // namespace kerfpacket::tests
