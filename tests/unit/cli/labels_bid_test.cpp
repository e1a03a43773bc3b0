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

/// B bends, C is stopped by its verdict, T is too tight to be made at all.
const std::string stopped_job = [] {
    const auto arch = [](const std::string& id, const std::string& figures, const std::string& board) {
        return "[[opening]]\nid = \"" + id + "\"\n" + figures +
               "depth = \"4 9/16 in\"\n[opening.liner]\nmaterial = \"mdf\"\nthickness = \"3/4 in\"\n" + board;
    };
    const std::string wide = "shape = \"segmental\"\nspan = \"58 3/4 in\"\nrise = \"13 5/8 in\"\n";
    const std::string tight = "shape = \"semicircular\"\nspan = \"5 3/8 in\"\nmeasured_to = \"wall\"\n";
    return "[job]\nnumber = \"S-1\"\ntitle = \"Stopped\"\nrevision = \"A\"\ndate = 2026-05-04\nunits = \"in\"\n"
           "[saw]\nblade_diameter = \"10 in\"\nkerf = 0.126\n" +
           arch("T", tight, "") + arch("B", wide, "") +
           arch("C", wide, "kerf_depth = \"1/4 in\"\nspacing = \"3/4 in\"\n");
}();

bool has(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

/// What the verdict stops is stopped in the plan by which boards are bought, and what cannot be made is missed there.
TEST(Stock, SaysWhichBoardsAreNotToBeCutAndWhatIsNotInThePlan) {
    const Folder folder;
    const int as_checked = run_on(folder, "check", stopped_job).status;
    EXPECT_EQ(as_checked, 3);
    const Outcome report = run_on(folder, "stock", stopped_job);
    EXPECT_EQ(report.status, as_checked);
    EXPECT_TRUE(has(report.out, "DO NOT CUT: C.")) << report.out;
    EXPECT_TRUE(has(report.out, "C: DO NOT CUT ")) << report.out;
    EXPECT_FALSE(has(report.out, "B: DO NOT CUT")) << report.out;
    EXPECT_TRUE(has(report.out, "NOT IN THIS PLAN, cannot be made as the job asks: T.")) << report.out;
    const Outcome json = run_on(folder, "stock", stopped_job, {"--json"});
    EXPECT_EQ(json.status, as_checked);
    const auto plan = nlohmann::json::parse(json.out);
    EXPECT_EQ(plan.at("do_not_cut"), nlohmann::json({"C"}));
    EXPECT_EQ(plan.at("not_in_plan"), nlohmann::json({"T"}));
    int blanks = 0;
    for (const auto& section : plan.at("sections"))
        for (const auto& stick : section.at("boards"))
            for (const auto& blank : stick.at("blanks")) {
                ++blanks;
                EXPECT_EQ(blank.at("do_not_cut"), blank.at("piece") == "C");
            }
    EXPECT_EQ(blanks, 2);
    const std::string csv = run_on(folder, "stock", stopped_job, {"--csv"}).out;
    EXPECT_TRUE(has(csv, ",do not cut,C: DO NOT CUT,")) << csv;
    EXPECT_TRUE(has(csv, ",blank,B,")) << csv;
    EXPECT_TRUE(has(csv, ",,,,,,,not in plan,T,,\n")) << csv;
    // The same boards that no machine is told of.
    const Outcome stops = run_on(folder, "stops", stopped_job);
    EXPECT_TRUE(has(stops.err, "piece C: do not cut")) << stops.err;
}

TEST(Stock, OfAJobWithoutCautionsEndsWell) {
    const Folder folder;
    const Outcome outcome = run_on(folder, "stock", good_job);
    EXPECT_NE(outcome.out.find("Coupons come out of the offcuts before any is kept: 3 in all."), std::string::npos)
        << outcome.out;
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_FALSE(has(outcome.out, "DO NOT CUT")) << outcome.out;
    EXPECT_FALSE(has(outcome.out, "NOT IN THIS PLAN")) << outcome.out;
}

/// By how much what is listed is too small, and for what.
TEST(Stock, SaysThatWhatIsListedIsTooNarrow) {
    const Folder folder;
    const std::string out = run_on(folder, "stock",
                                   good_job +
                                       "[[stock.boards]]\nmaterial = \"mdf\"\nthickness = \"3/4 in\"\n"
                                       "width = \"5 3/16 in\"\nlength = \"8 ft\"\n")
                                .out;
    EXPECT_TRUE(
        has(out, "3/4 x 5-1/4 in MDF: what the job lists of it is too narrow by 1/16 in, 5-3/16 in wide at most."))
        << out;
    EXPECT_FALSE(has(out, "does not say what is sold")) << out;
}

TEST(Bid, NamesWhatNoSumCounts) {
    const Folder folder;
    const auto bid = nlohmann::json::parse(run_on(folder, "bid", stopped_job, {"--json"}).out);
    EXPECT_EQ(bid.at("not_in_bid"), nlohmann::json({"T"}));
    EXPECT_EQ(bid.at("do_not_cut"), nlohmann::json({"C"}));
    // Two records, of B and of C, that ask for three each.
    int coupons = 0;
    for (const auto& work : bid.at("work"))
        if (work.at("rate") == "minutes_coupon") coupons = work.at("count");
    EXPECT_EQ(coupons, 6);
}

}  // namespace
}  // namespace kerfpacket::tests
