// Which shop file counts, and how its mistakes are told.
#include "cli/shop.h"

#include <gtest/gtest.h>

#include <sys/stat.h>

#include "session.h"
#include "support/variable.h"

namespace kerfpacket::tests {
namespace {

constexpr const char* shop_saw = "[saw]\nblade_diameter = \"12 in\"\nkerf = \"0.118 in\"\n";

class ShopChoice : public testing::Test {
protected:
    ShopChoice() {
        fs::create_directories(folder_ / "config/kerfpacket");
        fs::create_directories(folder_ / "home/.config/kerfpacket");
        fs::create_directories(folder_ / "jobs");
        std::string text = good_job;
        const std::size_t saw = text.find("[saw]");
        text.erase(saw, text.find("[printer]") - saw);
        spill(job(), text);
    }
    fs::path job() const { return folder_ / "jobs/arch.toml"; }
    fs::path beside() const { return folder_ / "jobs/shop.toml"; }
    fs::path of_user() const { return folder_ / "config/kerfpacket/shop.toml"; }
    fs::path at_home() const { return folder_ / "home/.config/kerfpacket/shop.toml"; }
    Outcome check(const std::vector<std::string>& more = {}) const {
        std::vector<std::string> words = {"check", job().string()};
        words.insert(words.end(), more.begin(), more.end());
        return run_in_process(words);
    }
    /// The name of the shop file that would be read.
    std::string read(const fs::path& named = {}) const {
        cli::JobChoice choice;
        choice.file = job();
        choice.shop = named;
        return cli::shop_path(choice).string();
    }

    const Folder folder_;
    const Variable config_{"XDG_CONFIG_HOME", (folder_ / "config").string()};
    const Variable home_{"HOME", (folder_ / "home").string()};
};

TEST_F(ShopChoice, NoneIsNeededWhereTheJobSaysAll) {
    EXPECT_EQ(read(), "");
    spill(job(), good_job);
    EXPECT_EQ(check().status, 0);
}

// What stands where a shop file would is the shop file, be it none that can be read: its corrections are not left out
// without a word.
TEST_F(ShopChoice, WhatIsThereAndCannotBeReadIsAnError) {
    spill(job(), good_job);
    const auto expect_told = [&](const std::string& why) {
        const Outcome outcome = check();
        EXPECT_EQ(outcome.status, 2) << why;
        EXPECT_NE(outcome.err.find("shop.toml:"), std::string::npos) << outcome.err;
        EXPECT_NE(outcome.err.find(why), std::string::npos) << outcome.err;
    };
    for (const fs::path& place : {beside(), of_user()}) {
        fs::create_directory(place);
        expect_told("this is a folder");
        fs::remove(place);
        ASSERT_EQ(mkfifo(place.c_str(), 0600), 0);
        expect_told("this is a device or a pipe");
        fs::remove(place);
        fs::create_symlink("nowhere.toml", place);
        expect_told("it is a link that leads nowhere");
        fs::remove(place);
    }
    EXPECT_EQ(check().status, 0);
}

TEST_F(ShopChoice, TheNearestCounts) {
    spill(at_home(), shop_saw);
    EXPECT_EQ(read(), "") << "XDG_CONFIG_HOME stands in place of ~/.config";
    {
        const Variable none("XDG_CONFIG_HOME", "");
        EXPECT_EQ(read(), at_home().string());
    }
    {
        const Variable relative("XDG_CONFIG_HOME", "config");
        EXPECT_EQ(read(), at_home().string());
    }
    spill(of_user(), shop_saw);
    EXPECT_EQ(read(), of_user().string());
    spill(beside(), shop_saw);
    EXPECT_EQ(read(), beside().string());
    spill(folder_ / "other.toml", shop_saw);
    EXPECT_EQ(read(folder_ / "other.toml"), (folder_ / "other.toml").string());
}

TEST_F(ShopChoice, TheJobItselfIsNoShopFile) {
    spill(folder_ / "shop.toml", good_job);
    EXPECT_EQ(run_in_process({"check", (folder_ / "shop.toml").string()}).status, 0);
}

TEST_F(ShopChoice, GivesTheSawToEveryCommand) {
    EXPECT_EQ(check().status, 2);
    spill(folder_ / "saw.toml", shop_saw);
    const std::string shop = (folder_ / "saw.toml").string();
    const Outcome outcome = check({"--shop", shop});
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    // The same job with the saw written into it has the same figures.
    spill(folder_ / "whole.toml", good_job);
    EXPECT_EQ(outcome.out, run_in_process({"check", (folder_ / "whole.toml").string()}).out);
    EXPECT_EQ(run_in_process({"build", job().string(), "--shop", shop}).status, 0);
    EXPECT_EQ(run_in_process({"preview", job().string(), "--shop", shop, "--dpi", "20"}).status, 0);
}

TEST_F(ShopChoice, OneThatIsNamedMustBeThere) {
    spill(beside(), shop_saw);
    const std::string missing = (folder_ / "nowhere.toml").string();
    const Outcome outcome = check({"--shop", missing});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_EQ(outcome.out, "");
    EXPECT_EQ(outcome.err, missing + ": error: there is no such file\n    expected a shop file\n");
}

TEST_F(ShopChoice, MistakesInBothFilesAreToldInOneRun) {
    spill(beside(), std::string(shop_saw) + "travl = 12\n[stock]\nlengths = 8\n");
    std::string text = slurp(job());
    text.replace(text.find("revision = \"B\""), 14, "revison = \"B\"");
    spill(job(), text);
    const Outcome outcome = check();
    EXPECT_EQ(outcome.status, 2);
    EXPECT_EQ(outcome.out, "");
    EXPECT_NE(
        outcome.err.find(beside().string() + ":4:1: error: unknown key \"travl\" in [saw]\n    travl = 12\n    ^\n"),
        std::string::npos)
        << outcome.err;
    EXPECT_NE(outcome.err.find(beside().string() + ":6:11: error: lengths must be"), std::string::npos) << outcome.err;
    EXPECT_NE(outcome.err.find(job().string() + ":4:1: error: unknown key \"revison\""), std::string::npos)
        << outcome.err;
}

TEST_F(ShopChoice, AMistypedKeyOfTheShopHidesNoMistakeOfPlanning) {
    spill(beside(), std::string(shop_saw) + "travl = 12\n");
    std::string text = slurp(job());
    text.replace(text.find("\"mdf\""), 5, "\"mfd\"");
    spill(job(), text);
    const Outcome outcome = check();
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("travl"), std::string::npos) << outcome.err;
    EXPECT_NE(outcome.err.find("unknown material \"mfd\""), std::string::npos) << outcome.err;
}

TEST_F(ShopChoice, AMissingJobIsToldBesideTheShopsMistakes) {
    spill(beside(), "kerf = 1\n");
    fs::remove(job());
    const Outcome outcome = check();
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("unknown key \"kerf\" in the shop file"), std::string::npos) << outcome.err;
    EXPECT_NE(outcome.err.find("arch.toml: error: there is no such file"), std::string::npos) << outcome.err;
}

}  // namespace
}  // namespace kerfpacket::tests
