// Slips of the keyboard, and how they are told: nothing of what toml++ says of them is left.
#include <string>
#include <string_view>
#include <vector>

#include <gtest/gtest.h>

#include "text/characters.h"
#include "text/toml.h"

using namespace kerfpacket;

namespace {

struct Slip {
    std::string text;
    int line;
    std::string_view told;
};

const std::string_view neither = "this is neither a number nor words in quotes";
const std::string_view behind = "this does not belong to the value before it";

const std::vector<Slip> slips{
    // Quotes.
    {"a = \"12 in", 1, "the quotes are not closed"},
    {"a = \"12 in\nb = 1\n", 1, "the quotes are not closed, or a control character stands here"},
    {"a = 'x", 1, "the quotes are not closed"},
    {"a = \"\"\"x\n", 1, "the quotes are not closed"},
    {"\"a = 1", 1, "the quotes are not closed"},
    {"a = 12 in\"", 1, behind},
    {"a = 12 in", 1, behind},
    {"a = \"x\" y", 1, behind},
    {"a = \"6' 2\"\"", 1, "the quotes are closed before this"},
    {"a = \u201C12 in\u201D", 1, neither},
    {"a = \"12 in\u201D", 1, "the quotes are not closed"},
    {"a = \u2018x\u2019", 1, neither},
    {"a = \"C:\\shop\"", 1, "a backslash does not stand alone in straight quotes"},
    {"a = \"\\u12\"", 1, "this is not the code of a character"},
    {"a = \"\\uD800\"", 1, "this is not the code of a character"},
    {"a = \"\\UFFFFFFFF\"", 1, "this is not the code of a character"},
    {"a = \"x\x01y\"", 1, "the quotes are not closed, or a control character stands here"},
    // Keys and tables.
    {"a \"12 in\"", 1, "there is no = between the key and its value"},
    {"a: 12", 1, "behind a key stands =, not a colon"},
    {"a b = 1", 1, "a key stands alone: expected key = value"},
    {"gr\u00F6\u00DFe = 1", 1, "a key stands alone: expected key = value"},
    {"a\nb = 1", 1, "a key stands alone: expected key = value"},
    {"a = 1\nb", 2, "the file ends too early: expected key = value"},
    {"a =", 1, "the file ends too early: expected key = value"},
    {"a =\nb = 1", 1, "a value is missing behind the ="},
    {"a = = 3", 1, neither},
    {"= 3", 1, "this is neither a key nor the name of a table"},
    {"a..b = 1", 1, "a name is missing here"},
    {"[saw.]", 1, "a name is missing here"},
    {"[saw", 1, "the table's name is not closed"},
    {"[saw\na = 1", 1, "the table's name is not closed"},
    {"[[saw]\na = 1", 1, "the table's name is not closed"},
    {"[saw]]", 1, "this does not belong behind the name of the table"},
    {"[saw] x = 1", 1, "this does not belong behind the name of the table"},
    {"saw]", 1, "a bracket is closed here that was not opened"},
    {"[]", 1, "the table has no name"},
    {"[.saw]", 1, "a name is missing here"},
    {"[ = ]", 1, "a name is missing here"},
    {"a = 1\n[[\n", 2, "a name is missing here"},
    {"[\u00F6]", 1, "a name is missing here"},
    {"a = 12 in\n[.saw]", 1, behind},
    {"\"\"\"a\"\"\" = 1", 1, "a key has no quotes of three"},
    {"// a comment", 1, "a comment begins with #"},
    {"* a = 1", 1, "this is neither a key nor the name of a table"},
    {"a = 1\na = 2", 2, "\"a\" is given twice"},
    {"[a]\n[a]", 2, "\"a\" is given twice"},
    {"[[a]]\n[a]", 2, "\"a\" is given twice"},
    {"[a]\n[[a]]", 2, "\"a\" is given twice"},
    {"a = 1\na.b = 2", 2, "this name is given twice"},
    {"a = {b = 1}\n[a.c]", 2, "this table is complete between { and } already"},
    // Lists.
    {"a = [1, 2", 1, "the file ends too early: a list is not closed with ]"},
    {"a = [1 2]", 1, "this does not belong in the list: expected a comma or ]"},
    {"a = [1,,2]", 1, "a value is missing before this comma"},
    {"a = {b = 1", 1, "the file ends too early: a table is not closed with }"},
    {"a = {b = 1,}", 1, "nothing follows the comma before this"},
    {"a = {,}", 1, "a key is missing before this comma"},
    {"a = {b = 1 c = 2}", 1, "this does not belong in the table: expected a comma or }"},
    {"a = {b = 1,\n c = 2}", 1, "a table between { and } stands on one line: expected a key or }"},
    // Values.
    {"a = 05", 1, "a number does not begin with 0"},
    {"a = 5.", 1, neither},
    {"a = .5", 1, neither},
    {"a = 1/2", 1, neither},
    {"a = 3-1/2", 1, neither},
    {"a = 4'", 1, neither},
    {"a = 72\u201D", 1, neither},
    {"a = 3\u00BD", 1, neither},
    {"a = 1,5", 1, "a comma stands behind the value: only a list has commas"},
    {"a = \"x\",", 1, "a comma stands behind the value: only a list has commas"},
    {"a = 1__0", 1, "a number has no _ in it"},
    {"a = _1", 1, "a number has no _ in it"},
    {"a = 0xg", 1, neither},
    {"a = 1e", 1, neither},
    {"a = --1", 1, neither},
    {"a = infinity", 1, neither},
    {"a = 1e999", 1, "the number is too large"},
    {"a = 99999999999999999999", 1, "the number is too large"},
    {"a = " + std::string(3000, '9'), 1, "the number is too large"},
    {"a = True", 1, "this is neither true nor false: both are written in small letters"},
    {"a = yes", 1, neither},
    {"a = 2026-13-01", 1, "the year has no such month"},
    {"a = 2026-02-30", 1, "the month has no such day"},
    {"a = 2026/02/03", 1, neither},
    {"a = 2026-2-3", 1, neither},
    {"a = 10:61:00", 1, "this is no date, and no time of day"},
    {"a = 1:12", 1, "this is no date, and no time of day"},
    // Spaces and line ends.
    {"a\u00A0= 1", 1, "this is not the space of a keyboard"},
    {"a = 1\u00A0", 1, "this is not the space of a keyboard"},
    {"a = 1\rb = 2\r", 1, "a line ends here as in no text file: with a carriage return alone"},
};

TEST(Wording, EverySlipIsToldWithItsLine) {
    for (const Slip& slip : slips) {
        const auto root = text::parse(slip.text);
        ASSERT_FALSE(root.has_value()) << slip.text.substr(0, 80);
        EXPECT_EQ(root.error().description, slip.told) << slip.text.substr(0, 80);
        EXPECT_EQ(root.error().line, slip.line) << slip.text.substr(0, 80);
        EXPECT_FALSE(root.error().unreasonable);
    }
}

TEST(Wording, TabsAndSpacesOfAKeyboardAreNoSlips) {
    for (const char* text : {"\ta\t=\t1\t# x\n", "  [ a ]  \n", "a = \"x\ty\"\n", "a = 1\r\n\r\nb = 2\r\n"})
        EXPECT_TRUE(text::parse(text).has_value()) << text;
}

// Every text that is cut off anywhere, or has one odd character anywhere.
TEST(Wording, NothingOfTheLibrarysOwnWordsIsLeft) {
    const std::string good =
        "[saw]\nkerf = 0.118 # x\n[[opening]]\nid = \"A\"\nspan = '6 ft'\nlist = [1, [2.5, \"x\"], {a = 1, b.c = "
        "true}]\n"
        "when = 2026-04-02T07:30:00Z\nat = 07:30:00\nhex = 0x1F\nbig = 1_000e3\nwords = \"\"\"x\ny\"\"\"\n\"\\u00e9\" "
        "= "
        "-inf\n";
    ASSERT_TRUE(text::parse(good).has_value());
    std::vector<std::string> texts;
    for (std::size_t i = 0; i < good.size(); ++i) {
        texts.push_back(good.substr(0, i));
        for (const std::string_view odd :
             {"\"", "'",      "=",      "[", "]", "{", "}", ",", ".", "\n", "\r", "\x01",
              "\\", "\u00A0", "\u201C", "x", "9", "_", "/", ":", "-", " ",  "#",  "\"\"\""}) {
            texts.push_back(good.substr(0, i) + std::string(odd) + good.substr(i + 1));
            texts.push_back(good.substr(0, i) + std::string(odd) + good.substr(i));
        }
    }
    int refused = 0, unknown = 0;
    for (const std::string& one : texts) {
        const auto root = text::parse(one);
        if (root) continue;
        ++refused;
        const std::string& told = root.error().description;
        for (const char* library : {"Error", "parsing", "saw", "sv", "codepoint", "U+", "\n"})
            EXPECT_EQ(told.find(library), told.starts_with("\"saw\"") ? told.find(library) : std::string::npos)
                << told << "\n"
                << one;
        EXPECT_EQ(text::printable(told), told);
        if (told == "this cannot be read") ++unknown;
        EXPECT_NE(told, "this cannot be read") << one;
    }
    EXPECT_GT(refused, 3000);
    EXPECT_EQ(unknown, 0);
}

}  // namespace
