// The one reader of TOML: what it refuses before toml++ sees it, and that nothing it lets through is deep.
#include "text/toml.h"

#include <algorithm>
#include <random>
#include <string>
#include <string_view>
#include <vector>

#include <gtest/gtest.h>

#include "text/scan.h"

using namespace kerfpacket;

namespace {

std::string repeat(std::string_view part, int count) {
    std::string text;
    for (int i = 0; i < count; ++i) text += part;
    return text;
}

int depth_of(const toml::node& node) {
    int deepest = 0;
    if (const auto* table = node.as_table())
        for (const auto& [key, inner] : *table) deepest = std::max(deepest, depth_of(inner));
    if (const auto* array = node.as_array())
        for (const auto& inner : *array) deepest = std::max(deepest, depth_of(inner));
    return node.is_table() || node.is_array() ? deepest + 1 : 0;
}

void expect_refused(const std::string& text, std::string_view why = "this is nested more than 32 deep") {
    const auto root = text::parse(text);
    ASSERT_FALSE(root.has_value()) << text.substr(0, 60);
    EXPECT_TRUE(root.error().unreasonable) << root.error().description;
    EXPECT_EQ(root.error().description, why);
}

TEST(Toml, TwentyThousandDotsOrBracketsAreRefusedUnparsed) {
    for (const int count : {40, 1'000, 20'000}) {
        const std::string dots = repeat(".a", count);
        for (const std::string& text :
             {"a" + dots + " = 1\n", "[a" + dots + "]\n", "[[a" + dots + "]]\n", "x = {a" + dots + " = 1}\n",
              "\"a\"" + repeat(".\"a\"", count) + " = 1\n", "a = " + std::string(static_cast<std::size_t>(count), '['),
              "a = " + repeat("{a = ", count), "a = " + repeat("[{a.a = ", count)}) {
            const auto root = text::parse(text);
            ASSERT_FALSE(root.has_value());
            EXPECT_TRUE(root.error().unreasonable);
        }
    }
    expect_refused("a = " + repeat("[\n", 20'000));
    expect_refused("[" + repeat("a.", 20) + "a]\n" + repeat("b.", 20) + "b = 1\n");
    expect_refused(repeat("a.", 20) + "a = [{" + repeat("b.", 20) + "b = 1}]\n");
}

TEST(Toml, QuotesDoNotHideDepth) {
    // Four quotes in a row: one of them belongs to the string.
    expect_refused("a = [\"\"\"x\"\"\"\", {" + repeat("b.", 40) + "b = 1}]\n");
    expect_refused("a = ['''x'''', {" + repeat("b.", 40) + "b = 1}]\n");
    expect_refused("a = [\"\\\"\", {" + repeat("b.", 40) + "b = 1}]\n");
}

TEST(Toml, SizesAndNumbersOfKeysAreBounded) {
    expect_refused(std::string(1'000'001, '\n'), "the text is over 1 MB");
    std::string keys;
    for (int i = 0; i <= 50'000; ++i) keys += "k" + std::to_string(i) + "=1\n";
    expect_refused(keys, "there are more than 50000 keys");
}

TEST(Toml, DotsOfNumbersAndWordsDoNotCount) {
    EXPECT_TRUE(text::parse("a = [" + repeat("0.5, ", 300) + "0.5]\nb = \"" + repeat(".", 500) + "\"\n").has_value());
    EXPECT_TRUE(text::parse("# " + repeat(".[{", 500) + "\nb = '''" + repeat("[.", 500) + "\n'''\n").has_value());
    EXPECT_TRUE(text::parse(repeat("[[opening]]\n[opening.liner]\nx = 0.5\n", 2'000)).has_value());
}

// Whatever the scan lets through and toml++ takes is no deeper than the limit, the root and the arrays of tables apart.
TEST(Toml, NothingThatIsParsedIsDeep) {
    const std::vector<std::string> parts{"a",     ".",      ".b",          "[",      "]", "[[", "]]",
                                         "{",     "}",      "=",           " = ",    "1", ",",  "\n",
                                         "\"",    "\"\"\"", "'",           "'''",    "#", "\\", "a.b.c.d.e.f.g.h",
                                         "\"x\"", "0.5",    "[a.b.c.d]\n", "x = 1\n"};
    std::mt19937 random(16);
    int parsed = 0;
    for (int i = 0; i < 100'000; ++i) {
        std::string text;
        const std::size_t count = 1 + random() % 40;
        for (std::size_t k = 0; k < count; ++k) text += parts[random() % parts.size()];
        const auto root = text::parse(text);
        if (!root) continue;
        ++parsed;
        ASSERT_LE(depth_of(*root), 2 * text::most_depth + 1) << text;
    }
    EXPECT_GT(parsed, 1'000);
}

TEST(Toml, OtherMistakesAreTomlsOwn) {
    const auto root = text::parse("a = 1\nb = \n");
    ASSERT_FALSE(root.has_value());
    EXPECT_FALSE(root.error().unreasonable);
    EXPECT_EQ(root.error().line, 2);
}

}  // namespace
