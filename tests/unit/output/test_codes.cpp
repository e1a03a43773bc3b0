#include "output/codes.h"

#include <gtest/gtest.h>

#include <set>

namespace kerfpacket::output {
namespace {

/// What the codes say, read back by the characters of their fonts.
std::u32string read_back(const Codes& codes, std::string_view text) {
    std::u32string characters;
    for (const Coded& part : codes.coded(text))
        for (const char byte : part.bytes)
            characters += codes.fonts().at(part.font).at(static_cast<unsigned char>(byte));
    return characters;
}

TEST(Codes, AsciiAndLatin1StandForThemselves) {
    Codes codes;
    codes.take("Strip 5|6 ~ ×½ÿ");
    const std::vector<Coded> parts = codes.coded("Strip 5|6 ~ ×½ÿ");
    ASSERT_EQ(parts.size(), 1U);
    EXPECT_EQ(parts[0].font, 0U);
    EXPECT_EQ(parts[0].bytes, "Strip 5|6 ~ \327\275\377");
}

TEST(Codes, OthersGetCodesThatAreNoOnesAndNoEndOfALine) {
    Codes codes;
    const std::string text = "3\u2033 \u2265 \u0158\u00A0\u00ADa\u2713";
    codes.take(text);
    EXPECT_EQ(read_back(codes, text), U"3\u2033 \u2265 \u0158\u00A0\u00ADa\u2713");
    std::set<char> used;
    for (const Coded& part : codes.coded("\u2033\u2265\u0158\u00A0\u00AD\u2713"))
        for (const char byte : part.bytes) {
            EXPECT_TRUE(used.insert(byte).second);
            EXPECT_EQ(std::string_view("\t\n\r 3a").find(byte), std::string_view::npos);
        }
    EXPECT_EQ(codes.fonts().size(), 1U);
}

/// A job in a language with many letters of its own: what one font cannot hold goes into the next.
TEST(Codes, MoreCharactersThanCodesTakeFurtherFonts) {
    Codes codes;
    std::string text;
    std::u32string expected;
    for (char32_t c = 0x4E00; c < 0x4E00 + 600; ++c) {
        text += {static_cast<char>(0xE0 | c >> 12U), static_cast<char>(0x80 | (c >> 6U & 0x3FU)),
                 static_cast<char>(0x80 | (c & 0x3FU))};
        expected += c;
        text += ' ';
        expected += U' ';
    }
    codes.take(text);
    EXPECT_EQ(codes.fonts().size(), 4U);  // some 60 in the first, 222 in each of the others
    EXPECT_EQ(read_back(codes, text), expected);
    // A space is in every font, so that it starts no part of its own.
    for (const Coded& part : codes.coded(text)) EXPECT_NE(part.bytes.front(), ' ');
}

TEST(Codes, TheSameTextsInTheSameOrderGiveTheSameCodes) {
    Codes one, two;
    for (Codes* codes : {&one, &two})
        for (const char* text : {"b \u2192", "a \u2190 \u2192"}) codes->take(text);
    EXPECT_EQ(one.fonts(), two.fonts());
}

}  // namespace
}  // namespace kerfpacket::output
