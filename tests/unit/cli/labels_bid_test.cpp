// What stands beside the packet, from the command line: labels and the bid sheet.

#include <gtest/gtest.h>

#include <nlohmann/json.hpp>

#include <algorithm>

#include "session.h"

namespace kerfpacket::tests {
namespace {

const std::string ten_on_a_sheet =
    "\n[printer.labels]\nmedia = \"na_letter_8.5x11in\"\ncolumns = 2\nrows = 5\nwidth = \"4 in\"\n"
    "height = \"2 in\"\nleft = \"1/4 in\"\ntop = \"1/2 in\"\n";

Outcome run_on(const Folder& folder, const std::string& command, const std::string& job,
               std::vector<std::string> more = {}) {
    spill(folder / "job.toml", job);
    more.insert(more.begin(), {command, (folder / "job.toml").string()});
    return run_in_process(more);
}

TEST(Labels, AreWrittenBesideTheJob) {
    const Folder folder;
    const Outcome outcome = run_on(folder, "labels", good_job + ten_on_a_sheet);
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_TRUE(fs::exists(folder / "job-labels.pdf"));
    EXPECT_NE((outcome.out + outcome.err).find("on Letter 8-1/2 x 11 in, 1 page"), std::string::npos) << outcome.err;
}

TEST(Labels, OfAShopFileAreTaken) {
    const Folder folder;
    spill(folder / "shop.toml", ten_on_a_sheet);
    EXPECT_EQ(run_on(folder, "labels", good_job).status, 0);
    spill(folder / "shop.toml", "[printer.labels]\nmedia = \"custom_roll_4in\"\nheight = \"1/2 in\"\n");
    const Outcome outcome = run_on(folder, "labels", good_job);
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("shop.toml: error: labels of 4 in x 1/2 in do not hold"), std::string::npos)
        << outcome.err;
}

TEST(Labels, ThatAreNotGivenAreAskedFor) {
    const Folder folder;
    const Outcome outcome = run_on(folder, "labels", good_job);
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("it is not said what labels are printed on"), std::string::npos) << outcome.err;
    EXPECT_FALSE(fs::exists(folder / "job-labels.pdf"));
}

TEST(Labels, TooSmallAreToldAtTheirLine) {
    const Folder folder;
    const std::string job = good_job + "\n[printer.labels]\nmedia = \"custom_roll_25mm\"\nheight = \"1 in\"\n";
    const Outcome outcome = run_on(folder, "labels", job);
    EXPECT_EQ(outcome.status, 2);
    const auto line = std::count(good_job.begin(), good_job.end(), '\n') + 2;
    EXPECT_NE(outcome.err.find("job.toml:" + std::to_string(line) + ":1: error: labels of"), std::string::npos)
        << outcome.err;
    EXPECT_NE(outcome.err.find("expected labels at least "), std::string::npos) << outcome.err;
}

TEST(Labels, BeginWithinTheirSheet) {
    const Folder folder;
    EXPECT_EQ(run_on(folder, "labels", good_job + ten_on_a_sheet, {"--labels-from", "10"}).status, 0);
    const Outcome beyond = run_on(folder, "labels", good_job + ten_on_a_sheet, {"--labels-from", "11"});
    EXPECT_EQ(beyond.status, 2);
    EXPECT_NE(beyond.err.find("expected at most 10"), std::string::npos) << beyond.err;
    EXPECT_EQ(run_on(folder, "labels", good_job + ten_on_a_sheet, {"--labels-from", "0"}).status, 2);
    const std::string roll = good_job + "\n[printer.labels]\nmedia = \"custom_roll_62mm\"\n";
    EXPECT_EQ(run_on(folder, "labels", roll, {"--labels-from", "2"}).status, 2);
}

TEST(Labels, AndRatesChangeNoFingerprint) {
    const Folder folder;
    const auto fingerprint = [&](const std::string& job) {
        return nlohmann::json::parse(run_on(folder, "check", job, {"--json"}).out).at("job").at("fingerprint");
    };
    EXPECT_EQ(fingerprint(good_job), fingerprint(good_job + ten_on_a_sheet + "\n[rates]\nhour = 60\n"));
}

TEST(Bid, TellsWhatIsGivenAndLeavesTheRest) {
    const Folder folder;
    const std::string job = good_job + "\n[rates]\nminutes_kerf = 0.5\nminutes_crosscut = 2\nminutes_coupon = 15\n";
    const Outcome outcome = run_on(folder, "bid", job, {"--json"});
    ASSERT_EQ(outcome.status, 0) << outcome.err;
    const auto told = nlohmann::json::parse(outcome.out);
    EXPECT_GT(told.at("minutes").get<double>(), 17);
    EXPECT_TRUE(told.at("labour").is_null());
    EXPECT_TRUE(told.at("sum").is_null());
    EXPECT_GT(told.at("sheets_of_paper").get<int>(), 5);
    EXPECT_FALSE(fs::exists(folder / "job-bid.pdf"));
    EXPECT_EQ(run_on(folder, "bid", job).status, 0);
    EXPECT_TRUE(fs::exists(folder / "job-bid.pdf"));
}

/// The good job and another one beside it.
class House : public testing::Test {
protected:
    Outcome run(const std::string& command, const std::string& other, std::vector<std::string> more = {}) const {
        spill(folder_ / "a.toml", good_job);
        spill(folder_ / "b.toml", other);
        more.insert(more.begin(), {command, (folder_ / "a.toml").string(), (folder_ / "b.toml").string()});
        return run_in_process(more);
    }
    /// With another number, and these words in place of some.
    static std::string other_job(const std::string& what = "", const std::string& by = "") {
        std::string text = good_job;
        text.replace(text.find("K-7"), 3, "K-8");
        if (!what.empty()) text.replace(text.find(what), what.size(), by);
        return text;
    }
    static std::string with_unit(std::string text) { return text.replace(text.find("0.118"), 5, "\"0.118 in\""); }
    std::string out(const char* name) const { return (folder_ / name).string(); }

    const Folder folder_;
};

TEST_F(House, HasItsLabelsOnOneStock) {
    spill(folder_ / "shop.toml", ten_on_a_sheet);
    const Outcome outcome = run("labels", other_job(), {"--out", out("all.pdf"), "--labels-from", "9"});
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    // Two blanks, and the offcut of the board that is bought for both.
    EXPECT_NE(outcome.out.find("3 labels on Letter 8-1/2 x 11 in, 2 pages"), std::string::npos) << outcome.out;
    EXPECT_TRUE(fs::exists(folder_ / "all.pdf"));
}

TEST_F(House, WantsANameForItsSheets) {
    spill(folder_ / "shop.toml", ten_on_a_sheet);
    for (const char* command : {"labels", "bid"}) {
        const Outcome outcome = run(command, other_job());
        EXPECT_EQ(outcome.status, 2);
        EXPECT_NE(outcome.err.find("has no name of its own; give one with --out"), std::string::npos) << outcome.err;
        fs::copy_file(folder_ / "b.toml", folder_ / "b.job", fs::copy_options::overwrite_existing);
        const Outcome over = run_in_process({command, out("a.toml"), out("b.job"), "--out", out("b.job"), "--force"});
        EXPECT_EQ(over.status, 2);
        EXPECT_NE(over.err.find("is the job file itself"), std::string::npos) << over.err;
    }
}

TEST_F(House, OfOtherUnitsLabelsOrRatesIsToldApart) {
    const auto refused = [&](const std::string& command, const std::string& other, const std::string& why) {
        const Outcome outcome = run(command, other, {"--out", out("all.pdf")});
        EXPECT_EQ(outcome.status, 2) << command;
        EXPECT_NE(outcome.err.find(why), std::string::npos) << outcome.err;
        EXPECT_FALSE(fs::exists(folder_ / "all.pdf"));
    };
    refused("labels", with_unit(other_job("\"in\"", "\"mm\"")), "is in other units than");
    refused("bid", good_job, "are both job \"K-7\"");
    refused("labels", other_job(), "it is not said what labels are printed on");
    spill(folder_ / "shop.toml", ten_on_a_sheet + "\n[rates]\nhour = 60\n");
    refused("bid", other_job() + "\n[rates]\nhour = 61\n", "the [rates] of ");
    refused("labels", other_job() + "\n[printer.labels]\nmedia = \"custom_roll_62mm\"\n", "the [printer.labels] of ");
}

TEST_F(House, IsBidForAtOnce) {
    const auto told = [&](const Outcome& outcome) {
        EXPECT_EQ(outcome.status, 0) << outcome.err;
        return nlohmann::json::parse(outcome.out);
    };
    const auto both = told(run("bid", other_job(), {"--json"}));
    const auto alone = told(run_in_process({"bid", out("a.toml"), "--json"}));
    EXPECT_EQ(both.at("jobs").size(), 2U);
    EXPECT_EQ(both.at("jobs").at(1).at("number"), "K-8");
    EXPECT_EQ(both.at("blanks").get<int>(), 2 * alone.at("blanks").get<int>());
    EXPECT_EQ(both.at("sheets_of_paper").get<int>(), 2 * alone.at("sheets_of_paper").get<int>());
    EXPECT_NEAR(both.at("kerf_stroke_mm").get<double>(), 2 * alone.at("kerf_stroke_mm").get<double>(), 1e-6);
    EXPECT_EQ(run("bid", other_job(), {"--out", out("bid.pdf")}).status, 0);
    EXPECT_TRUE(fs::exists(folder_ / "bid.pdf"));
}

}  // namespace
}  // namespace kerfpacket::tests
