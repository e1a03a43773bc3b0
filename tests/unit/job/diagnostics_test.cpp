#include "job/diagnostics.h"

#include <gtest/gtest.h>

#include "job/printer.h"

#include "job/text.h"

using namespace kerfpacket::job;
using namespace kerfpacket::measure::literals;

namespace {

Diagnostic at(int line, int column, std::string message) {
    return {Severity::error, {line, column}, Told(std::move(message)), Told()};
}

TEST(Render, SortsByPositionAndKeepsTheOrderWithin) {
    const Source source{"a.toml", "one\ntwo\n"};
    EXPECT_EQ(render({at(2, 2, "c"), at(1, 1, "a"), at(0, 0, "whole"), at(1, 1, "b")}, source),
              "a.toml: error: whole\n"
              "a.toml:1:1: error: a\n    one\n    ^\n"
              "a.toml:1:1: error: b\n    one\n    ^\n"
              "a.toml:2:2: error: c\n    two\n     ^\n");
}

TEST(Render, CautionsAndHints) {
    const Diagnostic d{Severity::caution, {1, 5}, Told("long blank"), Told("splices come later")};
    EXPECT_EQ(render({d}, {"a.toml", "x = 1"}),
              "a.toml:1:5: caution: long blank\n    x = 1\n        ^\n    splices come later\n");
}

TEST(Render, TabsStayTabsUnderTheLine) {
    EXPECT_EQ(render({at(1, 6, "m")}, {"a", "\ta =\t9 inn"}), "a:1:6: error: m\n    \ta =\t9 inn\n    \t   \t^\n");
}

TEST(Render, CharactersWithoutAShapeAreShownAsOneQuestionMark) {
    // U+009B starts a terminal's commands, U+2028 parts lines; each is one column wide here.
    EXPECT_EQ(render({at(1, 4, "m")}, {"a", "\xC2\x9B\xE2\x80\xA8\x1Bx"}), "a:1:4: error: m\n    ???x\n       ^\n");
    EXPECT_EQ(printable("\xC2\xA0\xE2\x80\x90\xE2\x80\xB3\t"), "\xC2\xA0\xE2\x80\x90\xE2\x80\xB3?");
}

TEST(Render, ColumnsCountCharacters) {
    EXPECT_EQ(render({at(1, 4, "m")}, {"a", "\xC3\xA9\xE2\x80\xB3\xF0\x9F\x98\x80x"}),
              "a:1:4: error: m\n    \xC3\xA9\xE2\x80\xB3\xF0\x9F\x98\x80x\n       ^\n");
}

TEST(Render, ALineEndOfWindowsIsNotShown) {
    EXPECT_EQ(render({at(1, 1, "m")}, {"a", "x\r\ny"}), "a:1:1: error: m\n    x\n    ^\n");
}

TEST(Render, ALongLineIsCutAroundTheCaret) {
    const std::string line = std::string(300, 'a') + "HERE" + std::string(300, 'b');
    const std::string shown = render({at(1, 301, "m")}, {"a", line});
    EXPECT_NE(shown.find("HERE"), std::string::npos);
    EXPECT_LT(shown.size(), 300U);
    const auto lines = split_lines(shown);
    ASSERT_EQ(lines.size(), 3U);
    EXPECT_EQ(lines[1].find("HERE"), lines[2].find('^'));
}

TEST(Render, APositionOutsideTheTextShowsNoLine) {
    EXPECT_EQ(render({at(9, 1, "m")}, {"a", "x"}), "a:9:1: error: m\n");
    EXPECT_EQ(render({at(1, 4, "m")}, {"a", "x"}), "a:1:4: error: m\n    x\n       ^\n");
    EXPECT_EQ(render({}, {"a", "x"}), "");
}

TEST(NearMiss, FindsSlipsOfTheKeyboard) {
    const std::vector<std::string_view> known = {"spacing", "span", "rise", "kerf_depth", "thickness"};
    EXPECT_EQ(near_miss("spacin", known), "spacing");
    EXPECT_EQ(near_miss("spcaing", known), "spacing");  // neighbours exchanged
    EXPECT_EQ(near_miss("spna", known), "span");
    EXPECT_EQ(near_miss("rize", known), "rise");
    EXPECT_EQ(near_miss("kerf-depth", known), "kerf_depth");
    EXPECT_EQ(near_miss("thicknesss", known), "thickness");
    EXPECT_EQ(near_miss("span", known), "span");
}

TEST(NearMiss, KeepsQuietWhenNothingIsNear) {
    const std::vector<std::string_view> known = {"spacing", "span", "rise"};
    EXPECT_EQ(near_miss("colour", known), "");
    EXPECT_EQ(near_miss("x", known), "");
    EXPECT_EQ(near_miss("", known), "");
    EXPECT_EQ(near_miss("rise", {}), "");
    EXPECT_EQ(near_miss(std::string(1'000'000, 's'), known), "");
}

TEST(Text, Quotes) {
    EXPECT_EQ(in_quotes("a\x1b[3m"), "\"a?[3m\"");
    EXPECT_EQ(in_quotes(std::string(50, 'x')), "\"" + std::string(40, 'x') + "...\"");
    EXPECT_EQ(characters("\xC3\xA9z"), 2U);
    EXPECT_EQ(split_lines("a\r\n\nb"), (std::vector<std::string_view>{"a", "", "b"}));
}

}  // namespace
