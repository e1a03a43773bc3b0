#include "sheets/layout/sheet_code.h"

#include <gtest/gtest.h>

#include "sheets/packet.h"
#include "support/pieces.h"
#include "support/shapes.h"

namespace kerfpacket::sheets {
namespace {

using namespace tests;

plan::Plan numbered(const std::string& number, const std::string& revision = "A") {
    plan::Plan plan = planned(job_of(harbor_stair()));
    plan.header.number = number;
    plan.header.revision = revision;
    plan.fingerprint = "4bd145b3";
    return plan;
}

TEST(SheetCode, SaysJobRevisionPageAndFingerprint) {
    EXPECT_EQ(sheet_code_words(numbered("M-417"), 7, "strips"), "M-417/A/7 STRIPS/4BD145B3");
    EXPECT_EQ(sheet_code_words(numbered("2026 k.3", "B2"), 112, "checklist"), "2026 k.3/B2/112 CHECKLIST/4BD145B3");
}

/// RFC 3986, 2.1: a percent sign and two hexadecimal digits for each byte of UTF-8.
TEST(SheetCode, SeparatorsAndLettersOfOtherScriptsAreEscaped) {
    EXPECT_EQ(sheet_code_words(numbered("3/4%", "\xC3\xA4"), 1, "cover"), "3%2F4%25/%C3%A4/1 COVER/4BD145B3");
}

page::CodeItem code_of(const plan::Plan& plan) {
    page::Page page;
    page.sheet = "strips";
    draw_sheet_code(page, plan, 7, {100_pt, 200_pt});
    EXPECT_EQ(page.items.size(), 1U);
    return std::get<page::CodeItem>(page.items.at(0));
}

/// ISO/IEC 18004: version 2 has 25 cells a side, version 3 has 29; finder patterns stand in three of the corners.
TEST(SheetCode, HasTheCellsOfTheStandard) {
    for (const auto& [number, side] : {std::pair{"M-417", 25U}, std::pair{"2026-kw-114 haus sued 22", 29U}}) {
        const page::CodeItem code = code_of(numbered(number));
        EXPECT_EQ(code.side, side) << number;
        ASSERT_EQ(code.dark.size(), code.side * code.side);
        const auto dark = [&](std::size_t row, std::size_t column) { return code.dark[row * code.side + column]; };
        for (std::size_t i = 0; i < 7; ++i) {
            EXPECT_TRUE(dark(0, i) && dark(6, i) && dark(i, 0) && dark(i, 6)) << i;
            EXPECT_TRUE(dark(0, side - 1 - i) && dark(side - 1 - i, 0)) << i;
            EXPECT_FALSE(dark(7, i) || dark(i, 7)) << i;
        }
        EXPECT_FALSE(dark(side - 1, side - 1) && dark(side - 1, side - 7) && dark(side - 7, side - 1));
        EXPECT_NEAR(code.area.width().inches(), 0.6, 1e-12);
        EXPECT_NEAR(code.area.low.x.points(), 100, 1e-9);
    }
}

TEST(SheetCode, StandsOnEverySheetOnce) {
    const page::Document packet = make_packet(numbered("M-417"), kit());
    for (std::size_t i = 0; i < packet.pages.size(); ++i) {
        std::vector<std::string> said;
        for (const page::Item& item : packet.pages[i].items)
            if (const auto* code = std::get_if<page::CodeItem>(&item)) said.push_back(code->text);
        EXPECT_EQ(said, std::vector{sheet_code_words(numbered("M-417"), i + 1, packet.pages[i].sheet)});
    }
}

}  // namespace
}  // namespace kerfpacket::sheets
