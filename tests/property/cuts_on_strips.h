#pragma once
// Whether the cut of every end stands on a strip with its words, by its line.

#include <gtest/gtest.h>

#include <algorithm>
#include <cmath>
#include <string>

#include "../support/boxes.h"
#include "plan/plan.h"

namespace kerfpacket::tests {

using namespace measure::literals;

/// How a cut's line is drawn: no wider than that when it stands square, and for every length up as much more as the
/// kerfs of a board that climbs lean.
struct CutLine {
    measure::Length widest = 20_pt;
    double lean = 0;

    bool may_be(const geom::Rect& drawn) const { return drawn.width() <= widest + drawn.height() * lean; }
};

/// A cut's words stand on one strip with the heavy line of that cut, within a hand of it.
inline bool stands_by_its_line(const page::Page& page, const page::TextItem& words, const CutLine& cut) {
    const geom::Rect box = box_of(words);
    const auto lines = paths(page, page::Role::limit);
    return std::any_of(lines.begin(), lines.end(), [&](const page::PathItem& line) {
        const geom::Rect drawn = line.path.bounds();
        if (line.dash != page::Dash::solid || drawn.height() < 9_pt || !cut.may_be(drawn)) return false;
        // The words lane is a few points below or above the words of the waste.
        if (drawn.low.y > box.high.y + 14_pt || drawn.high.y < box.low.y - 60_pt) return false;
        return drawn.high.x > box.low.x - 4.5_in && drawn.low.x < box.high.x + 4.5_in;
    });
}

/// Words of a strip that begin so, as many as stand by their line.
inline int words_by_lines(const page::Document& packet, const std::string& piece, const std::string& wanted,
                          const CutLine& cut = {}) {
    int found = 0;
    for (const page::Page& page : packet.pages) {
        if (page.sheet != "strips" || page.piece != piece) continue;
        for (const page::TextItem& text : texts(page))
            if (text.role == page::Role::limit && text.text.find(wanted) != std::string::npos &&
                stands_by_its_line(page, text, cut))
                ++found;
    }
    return found;
}

/// Every mitre with its angle, and what is cut off, stands on a strip.
inline int cuts_are_on_strips(const page::Document& packet, const plan::Plan& plan, const std::string& language,
                              const std::string& job) {
    const bool spanish = language.starts_with("es");
    int mitres = 0;
    for (const plan::Piece& piece : plan.pieces) {
        int cuts = 0;
        for (const plan::BoardEnd& end : piece.blank().ends) cuts += end.mitre.radians() != 0 ? 1 : 0;
        mitres += cuts;
        EXPECT_GE(words_by_lines(packet, piece.id, spanish ? "INGLETE " : "MITER "), cuts) << piece.id << '\n' << job;
        // There must be room for the word.
        if (piece.blank().trims[0] < 1.25_in) continue;
        for (std::size_t i = 0; i < piece.blanks.size(); ++i) {
            const plan::Piece one = piece.of_blank(i);
            if (one.blank().kerfs.empty()) continue;
            int sawn = 0;
            int scarfs = 0;
            for (const std::size_t end : {0U, 1U}) {
                sawn += one.blank().trims.at(end) > 0_mm ? 1 : 0;
                scarfs += one.blank().ends.at(end).meets == plan::BoardEnd::Meets::blank ? 1 : 0;
            }
            // The cuts of a board that climbs slant over the strip, or less far where they are flat.
            const char* off = one.rake ? (spanish ? "CORTE" : "CUT") : spanish ? "SOBRA " : "TRIM ";
            const CutLine end_cut{one.rake ? 1.8_in : 20_pt};
            const CutLine scarf{20_pt, std::abs(one.blank().lean / one.width)};
            EXPECT_GE(words_by_lines(packet, one.id, off, end_cut), sawn) << one.id << '\n' << job;
            EXPECT_GE(words_by_lines(packet, one.id, spanish ? "BISEL " : "SCARF ", scarf), scarfs) << one.id << '\n'
                                                                                                    << job;
        }
    }
    return mitres;
}

}  // namespace kerfpacket::tests
