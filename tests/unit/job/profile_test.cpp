// A measured printer: its file written and read, and what is refused in one.
#include "job/read_profile.h"

#include <gtest/gtest.h>

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

const std::string good =
    "name = \"shop-2\"\nfeed = \"long edge\"\nacross = 0.996\nalong = 1.002\n[margins]\nleft = \"1/4 in\"\n"
    "right = \"5 mm\"\nleading = \"1/2 in\"\ntrailing = \"0 in\"\n";

std::string told(const std::string& text) {
    const ProfileReading reading = read_profile({"shop-2.toml", text}, "shop-2");
    EXPECT_NE(reading.profile.has_value(), !reading.diagnostics.empty());
    return render(reading.diagnostics, {"shop-2.toml", text});
}

std::string changed(const std::string& from, const std::string& to) {
    std::string text = good;
    return text.replace(text.find(from), from.size(), to);
}

void expect_told(const std::string& text, const std::string& what) {
    EXPECT_NE(told(text).find(what), std::string::npos) << told(text);
}

TEST(Profile, IsRead) {
    ASSERT_EQ(told(good), "");
    const Profile profile = *read_profile({"shop-2.toml", good}, "shop-2").profile;
    EXPECT_EQ(profile.name, "shop-2");
    EXPECT_EQ(profile.feed, Feed::long_edge);
    EXPECT_DOUBLE_EQ(profile.across, 0.996);
    EXPECT_DOUBLE_EQ(profile.along, 1.002);
    EXPECT_DOUBLE_EQ(profile.margins.right.mm(), 5);
    EXPECT_DOUBLE_EQ(profile.margins.leading.inches(), 0.5);
    EXPECT_DOUBLE_EQ(profile.margins.trailing.mm(), 0);
}

TEST(Profile, IsReadBackAsItWasWritten) {
    const Profile profile{"plotter", 1.00123, 0.98765, Feed::short_edge, {0.25_in, 0.1875_in, 7_mm, 12.5_mm}};
    const ProfileReading reading = read_profile({"plotter.toml", profile_text(profile)}, "plotter");
    ASSERT_TRUE(reading.profile) << render(reading.diagnostics, {"plotter.toml", profile_text(profile)});
    EXPECT_EQ(profile_text(*reading.profile), profile_text(profile));
    EXPECT_DOUBLE_EQ(reading.profile->along, 0.98765);
    EXPECT_NEAR(reading.profile->margins.right.inches(), 0.1875, 1e-6);
}

TEST(Profile, MoreThanTwoPercentIsThePageMadeToFit) {
    expect_told(changed("0.996", "0.97"),
                "shop-2.toml:3:10: error: across says that the printer prints 3.00 % short: more than 2 % is the page "
                "made to fit");
    expect_told(changed("1.002", "1.021"), "along says that the printer prints 2.10 % long");
    expect_told(changed("0.996", "0.97"), "switch off \"fit to page\"");
    EXPECT_EQ(told(changed("0.996", "0.98")), "");
}

TEST(Profile, MistakesAreToldAtTheirPlace) {
    expect_told(changed("\"shop-2\"", "\"office\""),
                "1:8: error: this is the profile of \"office\", not of \"shop-2\"");
    expect_told(changed("long edge", "long side"), "2:8: error: unknown feed \"long side\"");
    expect_told(changed("long edge", "long side"), "did you mean \"long edge\"?");
    expect_told(changed("across = 0.996\n", ""), "across is missing from the printer profile");
    expect_told(changed("across", "acros"), "did you mean \"across\"?");
    expect_told(changed("0.996", "\"a bit\""), "across must be a number from 0.5 to 1.5");
    expect_told(changed("0.996", "nan"), "across must be a number from 0.5 to 1.5");
    expect_told(changed("1/2 in", "2 in"), "leading is too large: 2 in");
    expect_told(changed("right = \"5 mm\"\n", ""), "right is missing from [margins]");
    expect_told("name = \"shop-2\"\n", "the table [margins] is missing");
    expect_told(changed("\"5 mm\"", "5"), "a number without a unit");
    expect_told(changed("\"5 mm\"", "5 mm"), "error");
}

TEST(Profile, NamesAreThoseOfFiles) {
    for (const char* name : {"a", "Shop-2", "62"}) EXPECT_TRUE(is_profile_name(name)) << name;
    for (const char* name : {"", "a b", "../a", "a.toml", "\xC3\xA9"}) EXPECT_FALSE(is_profile_name(name)) << name;
    EXPECT_FALSE(is_profile_name(std::string(41, 'a')));
}

TEST(Profile, ErrorsAreSpokenInPercent) {
    EXPECT_EQ(printer_error(0.996), "0.40 % short");
    EXPECT_EQ(printer_error(1.002), "0.20 % long");
    EXPECT_EQ(printer_error(1.00001), "true");
}

}  // namespace
}  // namespace kerfpacket::job
