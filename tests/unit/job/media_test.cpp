// Sheets, sheets of other sizes, rolls: their names and what is printed of them.
#include "job/media.h"

#include <set>

#include <gtest/gtest.h>

namespace kerfpacket::job {
namespace {

TEST(Media, SizesOfThePwgNames) {
    // PWG 5101.1: the name of a medium ends in its own size.
    const auto letter = find_media("na_letter_8.5x11in");
    ASSERT_TRUE(letter);
    EXPECT_DOUBLE_EQ(letter->width.inches(), 8.5);
    EXPECT_DOUBLE_EQ(letter->height.inches(), 11);
    EXPECT_EQ(letter->plain_name, "Letter 8-1/2 x 11 in");
    EXPECT_EQ(all_media().front().name, letter->name);
    EXPECT_EQ(find_media("na_letter-plus_8.5x12.69in")->plain_name, "Letter plus 8-1/2 x 12.69 in");
    EXPECT_FALSE(find_media(""));
}

TEST(Media, SizesOfTheIsoSeries) {
    // ISO 216: A0 is 841 x 1189 mm, B0 1000 x 1414 mm, and each size is half of the one before it, rounded down.
    for (const auto& [series, width, height] : {std::tuple('a', 841, 1189), std::tuple('b', 1000, 1414)}) {
        int short_side = width, long_side = height;
        for (int n = 0; n <= 4; ++n) {
            const std::string name = std::string("iso_") + series + std::to_string(n) + "_" +
                                     std::to_string(short_side) + "x" + std::to_string(long_side) + "mm";
            const auto media = find_media(name);
            ASSERT_TRUE(media) << name;
            EXPECT_DOUBLE_EQ(media->width.mm(), short_side) << name;
            EXPECT_DOUBLE_EQ(media->height.mm(), long_side) << name;
            const int half = long_side / 2;
            long_side = short_side;
            short_side = half;
        }
    }
}

TEST(Media, EveryNameIsFoundAgainAndIsUpright) {
    std::set<std::string> names, plain_names;
    for (const Media& media : all_media()) {
        const auto again = find_media(media.name);
        ASSERT_TRUE(again) << media.name;
        EXPECT_EQ(again->plain_name, media.plain_name);
        EXPECT_LT(media.width, media.height) << media.name;
        EXPECT_FALSE(media.roll);
        EXPECT_TRUE(names.insert(media.name).second) << media.name;
        EXPECT_TRUE(plain_names.insert(media.plain_name).second) << media.plain_name;
    }
    EXPECT_GE(names.size(), 40U);
}

TEST(Media, CustomSheetsAreTurnedUpright) {
    const auto sheet = find_media("custom_card_20x8.5in");
    ASSERT_TRUE(sheet);
    EXPECT_EQ(sheet->name, "custom_card_8.5x20in");
    EXPECT_EQ(sheet->plain_name, "Custom 8-1/2 x 20 in");
    EXPECT_DOUBLE_EQ(sheet->width.inches(), 8.5);
    EXPECT_DOUBLE_EQ(sheet->height.inches(), 20);
    EXPECT_EQ(find_media(sheet->name)->name, sheet->name);
    EXPECT_EQ(find_media("custom_long-one_210x1200mm")->plain_name, "Custom 210 x 1200 mm");
    // A sheet that happens to be called roll is none.
    EXPECT_FALSE(find_media("custom_roll_24x36in")->roll);
}

TEST(Media, RollsAreAsWideAsTheirNameSays) {
    const auto label = find_media("custom_roll_62mm");
    ASSERT_TRUE(label);
    EXPECT_TRUE(label->roll);
    EXPECT_EQ(label->plain_name, "Roll 62 mm wide");
    EXPECT_DOUBLE_EQ(label->width.mm(), 62);
    EXPECT_DOUBLE_EQ(label->height.inches(), 200);
    const auto plotter = find_media("custom_roll_24.5in");
    ASSERT_TRUE(plotter);
    EXPECT_EQ(plotter->plain_name, "Roll 24-1/2 in wide");
    for (const char* name : {"custom_roll_25mm", "custom_roll_1in", "custom_roll_44in", "custom_roll_1117.6mm"})
        EXPECT_EQ(find_media(name).value_or(Media{}).name, name);
}

TEST(Media, OtherNamesAreRefused) {
    for (const char* name :
         {"custom_roll_24mm", "custom_roll_45in",   "custom_roll_62",  "custom_roll_1e2mm", "custom_roll_-3in",
          "custom_roll_.5in", "custom_roll_5.in",   "custom_roll_in",  "custom_roll_nanin", "custom_plotter_24in",
          "custom_8x20in",    "custom__8x20in",     "custom_a_8x20",   "custom_a_8x9in",    "custom_a_8x201in",
          "custom_a_8xx20in", "custom_a_8x20x30in", "custom_A_8x20in", "custom_a_0x20in",   "custom_",
          "custom",           "roll_62mm"}) {
        EXPECT_FALSE(find_media(name)) << name;
        EXPECT_FALSE(media_hint(name).empty()) << name;
    }
}

TEST(Media, HintsSayWhatIsMeant) {
    EXPECT_EQ(media_hint("na_letter_8x11in"), R"(did you mean "na_letter_8.5x11in"?)");
    EXPECT_EQ(media_hint("wallpaper"), R"("kerfpacket media" lists what is known)");
    EXPECT_NE(media_hint("custom_roll_62").find("custom_roll_62mm"), std::string::npos);
    EXPECT_NE(media_hint("custom_a_2x3in").find("custom_NAME_WxHin"), std::string::npos);
}

}  // namespace
}  // namespace kerfpacket::job
