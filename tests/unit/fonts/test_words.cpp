#include "fonts/words.h"

#include <gtest/gtest.h>

#include "scratch.h"

namespace kerfpacket::fonts {
namespace {

using ::testing::Test;

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

class WordsTest : public Test {
protected:
    WordsTest() {
        scratch_.write("xx/strip.toml",
                       "title = \"Mark strip\"\nlap = \"{n} of {m}, {n} again\"\n[end]\nzero = \"ZERO END\"\n"
                       "steps = [\"One.\", \"Two.\"]\n[end.deep]\nfar = \"far\"\n");
        scratch_.write("xx/cover.toml", "title = \"Cover\"\n");
        scratch_.write("xx/notes.txt", "not = words");
    }
    Words words() const { return {scratch_.path(), "xx"}; }
    Scratch scratch_;
};

TEST_F(WordsTest, KeysAreFileDotTableDotKey) {
    EXPECT_EQ(words()("strip.title"), "Mark strip");
    EXPECT_EQ(words()("cover.title"), "Cover");
    EXPECT_EQ(words()("strip.end.zero"), "ZERO END");
    EXPECT_EQ(words()("strip.end.deep.far"), "far");
    EXPECT_EQ(words().list("strip.end.steps"), (std::vector<std::string>{"One.", "Two."}));
}

TEST_F(WordsTest, NamesInBracesBecomeValues) {
    EXPECT_EQ(words()("strip.lap", {{"n", "2"}, {"m", "5"}}), "2 of 5, 2 again");
    EXPECT_EQ(words()("strip.title", {{"unused", "x"}}), "Mark strip");
    EXPECT_EQ(words()("strip.lap", {{"n", "{m}"}, {"m", "5"}}), "{m} of 5, {m} again");  // values are not read again
}

TEST_F(WordsTest, FiguresInBracesTakeTheDecimalMarkOfTheWordsOrOfTheShop) {
    scratch_.write("xx/numbers.toml", "decimal = \",\"\n");
    scratch_.write("xx/limits.toml", "ok = \"ok to {0.60}, {n} over {1.25}\"\n");
    EXPECT_EQ(words()("limits.ok", {{"n", "2"}}), "ok to 0,60, 2 over 1,25");
    const Words shop(scratch_.path(), "xx", {{"xx/numbers.toml", "decimal = \".\"\n", "shop"}});
    EXPECT_EQ(shop("limits.ok", {{"n", "2"}}), "ok to 0.60, 2 over 1.25");
}

TEST_F(WordsTest, WhatIsMissingIsNamed) {
    EXPECT_TRUE(holds(thrown_by([&] { words()("strip.titel"); }), "strip.titel"));
    EXPECT_TRUE(holds(thrown_by([&] { words().list("strip.title"); }), "strip.title"));
    EXPECT_TRUE(holds(thrown_by([&] { words()("strip.lap", {{"n", "2"}}); }), "{m}"));
    EXPECT_TRUE(holds(thrown_by([&] { words().list("strip.title"); }), "strip.toml:1: strip.title must be a list"));
    EXPECT_TRUE(holds(thrown_by([&] { words()("strip.end.steps"); }), "strip.toml:5: strip.end.steps must be text"));
    EXPECT_TRUE(holds(thrown_by([&] { Words(scratch_.path(), "yy"); }), "yy"));
}

TEST_F(WordsTest, MistakesNameFileLineAndKey) {
    scratch_.write("xx/setup.toml", "a = \"x\"\n\ndepth = 5\n");
    const std::string number = thrown_by([&] { words(); });
    EXPECT_TRUE(holds(number, "setup.toml:3: setup.depth")) << number;
    scratch_.write("xx/setup.toml", "a = \"x\"\nsteps = [\"one\",\n 2]\n");
    const std::string list = thrown_by([&] { words(); });
    EXPECT_TRUE(holds(list, "setup.toml:3: setup.steps")) << list;
    scratch_.write("xx/setup.toml", "a = \"x\"\nopen = \"a {brace\"\n");
    EXPECT_TRUE(holds(thrown_by([&] { words(); }), "setup.toml:2: setup.open opens a brace and never closes it"));
    scratch_.write("xx/setup.toml", "a = \"x\"\nb = \"never closed\n");
    const std::string broken = thrown_by([&] { words(); });
    EXPECT_TRUE(holds(broken, "setup.toml:2: ")) << broken;
}

}  // namespace
}  // namespace kerfpacket::fonts
