#pragma once
// Sheets at full size of a template along its curve, as they are told apart and laid.

#include <gtest/gtest.h>

#include <algorithm>
#include <map>
#include <regex>
#include <string>
#include <utility>
#include <vector>

#include "../support/boxes.h"
#include "../support/kit.h"

namespace kerfpacket::tests {

/// With the number in its head, of each template of more than one.
inline std::vector<std::pair<std::string, const page::Page*>> template_sheets(const page::Document& packet) {
    const std::regex title(".*(sheet|hoja) ([0-9]+)");
    std::vector<std::pair<std::string, const page::Page*>> sheets;
    std::map<std::string, int> of_piece;
    for (const page::Page& page : packet.pages)
        for (const page::TextItem& text : texts(page)) {
            std::smatch match;
            if (page.sheet != "template" || !std::regex_match(text.text, match, title)) continue;
            sheets.emplace_back(match[2], &page);
            ++of_piece[page.piece];
        }
    std::erase_if(sheets, [&](const auto& sheet) { return of_piece.at(sheet.second->piece) == 1; });
    return sheets;
}

inline bool says(const page::Page& page, const std::regex& words, measure::Length least_size = {}) {
    const auto all = texts(page);
    return std::any_of(all.begin(), all.end(), [&](const page::TextItem& text) {
        return text.size >= least_size && std::regex_search(text.text, words);
    });
}

/// A sheet's own number, large, and which side of it is up.
inline void expect_number_and_top(const page::Page& page, const std::string& number) {
    EXPECT_TRUE(says(page, std::regex("^" + number + "$"), kit().style.huge));
    EXPECT_TRUE(says(page, std::regex("^(TOP|ARRIBA)")));
}

}  // namespace kerfpacket::tests
