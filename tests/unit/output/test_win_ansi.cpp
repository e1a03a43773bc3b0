#include "output/win_ansi.h"

#include <gtest/gtest.h>

namespace kerfpacket::output {
namespace {

// Codes from ISO 32000-1, annex D.2, column WIN (octal there).
TEST(WinAnsi, GivesTheCodesOfTheStandard) {
    EXPECT_EQ(win_ansi("Strip 5|6 ~"), "Strip 5|6 ~");
    EXPECT_EQ(win_ansi("×±°½ñ¿ÿ"), "\327\261\260\275\361\277\377");
    EXPECT_EQ(win_ansi("€‚„…†‡‰‹‘’“”•–—™›"), "\200\202\204\205\206\207\211\213\221\222\223\224\225\226\227\231\233");
    EXPECT_EQ(win_ansi("ŠŒŽšœžŸ"), "\212\214\216\232\234\236\237");
    EXPECT_EQ(win_ansi(""), "");
}

TEST(WinAnsi, TheWholeLineGoesWhenOneCharacterDoes) {
    for (const char* text : {"12″", "▲ up", "Řád", "no\u00A0break", "soft\u00ADhyphen", "\x07", "\u0081", "\xFF"})
        EXPECT_EQ(win_ansi(text), std::nullopt) << text;
}

}  // namespace
}  // namespace kerfpacket::output
