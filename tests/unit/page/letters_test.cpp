#include "page/letters.h"

#include <gtest/gtest.h>

namespace kerfpacket::page {
namespace {

Page page_of(std::initializer_list<std::pair<Face, std::string>> words) {
    Page page;
    for (const auto& [face, text] : words) {
        TextItem item;
        item.face = face;
        item.text = text;
        page.items.emplace_back(item);
    }
    page.items.emplace_back(LinkItem{});
    return page;
}

TEST(Letters, AreToldOnceAFaceInTheOrderTheyCame) {
    Letters letters;
    letters.take(
        page_of({{Face::regular, "7\u00BD in"}, {Face::bold, "\u2153"}, {Face::regular, "ni \u2153\u00BD 8"}}));
    EXPECT_EQ(letters.of(Face::regular), "7\u00BD in\u21538");
    EXPECT_EQ(letters.of(Face::bold), "\u2153");
    EXPECT_EQ(letters.of(Face::condensed), "");
}

TEST(Letters, OfOthersComeBehind) {
    Letters first, second;
    first.take(page_of({{Face::regular, "ab\u00E9"}}));
    second.take(page_of({{Face::regular, "\u00F1b\u00E9c"}, {Face::condensed_bold, "x"}}));
    first.take(second);
    EXPECT_EQ(first.of(Face::regular), "ab\u00E9\u00F1c");
    EXPECT_EQ(first.of(Face::condensed_bold), "x");
}

/// \u00A9 is C2 A9, \u00E9 is C3 A9: they share a byte.
TEST(Letters, ThatShareBytesAreTwo) {
    Letters letters;
    letters.take(page_of({{Face::regular, "\u00A9\u00E9\u00A9"}}));
    EXPECT_EQ(letters.of(Face::regular), "\u00A9\u00E9");
}

/// Who needs them then finds it.
TEST(Letters, KeepWhatIsNoCharacter) {
    Letters letters;
    letters.take(page_of({{Face::regular, "caf\xE9"}}));
    EXPECT_EQ(letters.of(Face::regular), "caf\xE9");
}

}  // namespace
}  // namespace kerfpacket::page
