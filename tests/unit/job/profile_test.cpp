#include "job/profile.h"

#include <gtest/gtest.h>

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

ProfileReading read(const std::string& text) { return read_profile({"office.toml", text}, "office"); }

TEST(Profile, ReadsBackWhatWasStored) {
    const Profile stored{"office", 0.996, 1.002, Feed::long_edge, {4.2_mm, 3_mm, 0.25_in, 12_mm}};
    const ProfileReading again = read(profile_text(stored));
    EXPECT_TRUE(again.diagnostics.empty());
    EXPECT_EQ(again.profile.name, "office");
    EXPECT_DOUBLE_EQ(again.profile.across, 0.996);
    EXPECT_DOUBLE_EQ(again.profile.along, 1.002);
    EXPECT_EQ(again.profile.feed, Feed::long_edge);
    EXPECT_NEAR(again.profile.margins.left.mm(), 4.2, 1e-9);
    EXPECT_NEAR(again.profile.margins.right.mm(), 3, 1e-9);
    EXPECT_NEAR(again.profile.margins.leading.inches(), 0.25, 1e-9);
    EXPECT_NEAR(again.profile.margins.trailing.mm(), 12, 1e-9);
}

std::string first_message(const std::string& text) {
    const ProfileReading reading = read(text);
    return reading.diagnostics.empty() ? "" : reading.diagnostics.front().message;
}

TEST(Profile, MoreThanTwoPerCentIsFitToPage) {
    EXPECT_EQ(first_message("across = 0.98\nalong = 1.02\n"), "");
    EXPECT_EQ(first_message("across = 0.979\nalong = 1\n"),
              "across is more than 2 % off: that is what \"fit to page\" does");
    EXPECT_EQ(first_message("across = 1\nalong = 1.0201\n"),
              "along is more than 2 % off: that is what \"fit to page\" does");
}

TEST(Profile, TellsEveryMistake) {
    EXPECT_EQ(first_message("along = 1\n"), "the profile says nothing of across");
    EXPECT_EQ(first_message("across = 1\nalong = 1\nfed = \"x\"\n"), "unknown key \"fed\" in the profile");
    EXPECT_FALSE(first_message("across = \"1\"\nalong = 1\n").empty());
    EXPECT_FALSE(first_message("across = nan\nalong = 1\n").empty());
    EXPECT_FALSE(first_message("across = 1\nalong = 1\nmargins = [\"1 in\", \"0\", \"0\", \"0\"]\n").empty());
    EXPECT_FALSE(first_message("across = 1\nalong = 1\nfeed = \"sideways\"\n").empty());
    EXPECT_FALSE(first_message("across = ").empty());
}

TEST(Profile, NamesAreFileNames) {
    for (const char* good : {"office", "Label printer 2", "a-b_c"}) EXPECT_TRUE(is_profile_name(good)) << good;
    for (const char* bad : {"", " office", "office ", "../x", "a/b", "a.b", "caf\xC3\xA9", "a\nb"})
        EXPECT_FALSE(is_profile_name(bad)) << bad;
    EXPECT_FALSE(is_profile_name(std::string(41, 'a')));
}

}  // namespace
}  // namespace kerfpacket::job
