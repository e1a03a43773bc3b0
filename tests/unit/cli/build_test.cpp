#include "cli/build.h"

#include <gtest/gtest.h>

#include "cli/found.h"
#include "session.h"

namespace kerfpacket::tests {
namespace {

class Build : public testing::Test {
protected:
    Build() { spill(job(), good_job); }
    fs::path job() const { return folder_ / "arch.toml"; }
    fs::path pdf() const { return folder_ / "arch.pdf"; }
    Outcome build(const std::vector<std::string>& more = {}) const {
        std::vector<std::string> words = {"build", job().string()};
        words.insert(words.end(), more.begin(), more.end());
        return run_in_process(words);
    }
    std::size_t files() const {
        return static_cast<std::size_t>(
            std::distance(fs::directory_iterator(folder_.path()), fs::directory_iterator()));
    }
    const Folder folder_;
};

TEST_F(Build, WritesBesideTheJob) {
    const Outcome outcome = build();
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_EQ(outcome.err, "");
    EXPECT_TRUE(outcome.out.starts_with(pdf().string() + ": ")) << outcome.out;
    EXPECT_TRUE(slurp(pdf()).starts_with("%PDF-"));
    EXPECT_EQ(files(), 2U);
}

// A library that once wrote packets could not save one of its faces.
TEST_F(Build, WritesAPacketWhoseFaceEndsOnABlockOfMemory) {
    spill(job(), slurp(fs::path(KERFPACKET_SOURCE_DIR) / "tests/property/found/faces-on-a-block-end.toml"));
    const Outcome outcome = build();
    EXPECT_NE(outcome.status, 2) << outcome.err;
    EXPECT_TRUE(slurp(pdf()).starts_with("%PDF-"));
    const Outcome verified = run_in_process({"verify", pdf().string(), job().string()});
    EXPECT_EQ(verified.status, 0) << verified.err << verified.out;
}

TEST_F(Build, ReplacesItsOwnPackets) {
    EXPECT_EQ(build().status, 0);
    EXPECT_TRUE(cli::found_at(pdf()).ours);
    EXPECT_EQ(build().status, 0);
}

TEST_F(Build, ReplacesNothingElseUnlessForced) {
    for (const std::string& theirs : {std::string(), std::string("a letter"), std::string("%PDF-1.4\ngarbage"),
                                      std::string("%PDF-1.4\n1 0 obj\n<</Producer (kerfpacket)>>\nendobj\n")}) {
        spill(pdf(), theirs);
        EXPECT_FALSE(cli::found_at(pdf()).ours);
        const Outcome outcome = build();
        EXPECT_EQ(outcome.status, 2);
        EXPECT_TRUE(outcome.err.starts_with("kerfpacket: " + pdf().string() + " is there already")) << outcome.err;
        EXPECT_NE(outcome.err.find("--force"), std::string::npos) << outcome.err;
        EXPECT_EQ(slurp(pdf()), theirs);
    }
    EXPECT_EQ(build({"--force"}).status, 0);
    EXPECT_TRUE(cli::found_at(pdf()).ours);
}

TEST_F(Build, PrintsWeakLinksOnlyWhenForced) {
    std::string kerfs = "kerfs = [3, 3.5";
    // Every half inch but one: the bend of 73 in begins 3 in from zero.
    for (int i = 8; i < 154; ++i)
        if (i != 60) kerfs += ", " + std::to_string(i / 2) + (i % 2 == 0 ? "" : ".5");
    std::string text = good_job;
    text.replace(text.find("trim = "), 0, kerfs + "]\n");
    spill(job(), text);
    const Outcome refused = build();
    EXPECT_EQ(refused.status, 2);
    EXPECT_EQ(refused.err,
              "kerfpacket: piece A has weak links, where a board breaks first: the gaps beside kerfs 54, 55 differ by "
              "more than 1.25 times; even them out, or print all the same with --force\n");
    EXPECT_FALSE(fs::exists(pdf()));
    EXPECT_EQ(build({"--force"}).status, 3);
    EXPECT_TRUE(cli::found_at(pdf()).ours);
}

TEST_F(Build, NeverReplacesTheJobFileOrAFolder) {
    EXPECT_EQ(build({"--force", "--out", job().string()}).status, 2);
    EXPECT_EQ(slurp(job()), good_job);
    EXPECT_EQ(build({"--force", "--out", folder_.path().string()}).status, 2);
    EXPECT_EQ(build({"--force", "--out", "/dev/null"}).status, 2);
    EXPECT_EQ(files(), 1U);
}

TEST_F(Build, NeverReplacesAFileOfFiguresOrWords) {
    const fs::path shop = folder_ / "shop.toml", named = folder_ / "ours.pdf";
    spill(shop, "[stock]\nlengths = [\"16 ft\"]\n");
    EXPECT_EQ(build({"--force", "--out", shop.string()}).status, 2);
    EXPECT_EQ(build({"--force", "--out", (folder_ / "SHOP.TOML").string()}).status, 2);
    EXPECT_EQ(run_in_process({"field-sheet", "--force", "--out", shop.string()}).status, 2);
    // Under another name it is the shop file still.
    fs::create_hard_link(shop, named);
    const Outcome outcome = build({"--force", "--out", named.string()});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find(named.string() + " is the shop file itself"), std::string::npos) << outcome.err;
    fs::remove(named);
    fs::create_symlink("shop.toml", named);
    EXPECT_EQ(build({"--force", "--out", named.string()}).status, 2);
    EXPECT_EQ(slurp(shop), "[stock]\nlengths = [\"16 ft\"]\n");
}

TEST_F(Build, AFolderThatIsNotThereIsTold) {
    const Outcome outcome = build({"--out", (folder_ / "nowhere/arch.pdf").string()});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("nowhere"), std::string::npos) << outcome.err;
    EXPECT_EQ(files(), 1U);
}

TEST_F(Build, CautionsAreThree) {
    spill(job(), short_stock_job);
    EXPECT_EQ(build().status, 3);
    EXPECT_TRUE(fs::exists(pdf()));
}

TEST_F(Build, OtherPaperMakesAnotherPacket) {
    EXPECT_EQ(build().status, 0);
    const std::string letter = slurp(pdf());
    // Not under the same revision in the same place.
    EXPECT_EQ(build({"--media", "iso_a4_210x297mm"}).status, 2);
    EXPECT_EQ(slurp(pdf()), letter);
    const std::string other = (folder_ / "a4.pdf").string();
    EXPECT_EQ(build({"--media", "iso_a4_210x297mm", "--out", other}).status, 0);
    EXPECT_NE(slurp(other), letter);
}

TEST_F(Build, UnknownPaperSuggestsTheNearMiss) {
    const Outcome outcome = build({"--media", "na_leter_8.5x11in"});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("did you mean \"na_letter_8.5x11in\"?"), std::string::npos) << outcome.err;
    EXPECT_EQ(files(), 1U);
}

TEST_F(Build, ACharacterThatNoFontHasIsShownInTheJob) {
    std::string text = good_job;
    text.replace(text.find("Mill Lane"), 9, "Mill \xE6\xB0\xB4");
    spill(job(), text);
    const Outcome outcome = build();
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("arch.toml:3:15: error: the character \xE6\xB0\xB4 (U+6C34)"), std::string::npos)
        << outcome.err;
    EXPECT_EQ(files(), 1U);
}

TEST_F(Build, MistakesOfReadingAndOfPlanningAreToldInOneRun) {
    std::string text = good_job;
    text.replace(text.find("revision = \"B\""), 14, "revison = \"B\"");
    text.replace(text.find("trim = \"3 in\""), 13, "trim = \"3 in\"\nkerf_depth = \"47/64 in\"");
    spill(job(), text);
    const Outcome outcome = build();
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("revison"), std::string::npos) << outcome.err;
    EXPECT_NE(outcome.err.find("47/64"), std::string::npos) << outcome.err;
    EXPECT_EQ(files(), 1U);
}

}  // namespace
}  // namespace kerfpacket::tests
