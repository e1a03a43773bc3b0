#include "cli/revision.h"

#include <gtest/gtest.h>

#include <cerrno>
#include <set>

#include "disk/calls.h"
#include "session.h"

namespace kerfpacket::tests {
namespace {

bool holds(const std::string& text, const std::string& part) { return text.find(part) != std::string::npos; }

TEST(Revision, CountsOn) {
    for (const auto& [one, next] : std::vector<std::pair<std::string, std::string>>{{"A", "B"},
                                                                                    {"Z", "AA"},
                                                                                    {"AZ", "BA"},
                                                                                    {"ZZ", "AAA"},
                                                                                    {"b", "c"},
                                                                                    {"z", "aa"},
                                                                                    {"0", "1"},
                                                                                    {"9", "10"},
                                                                                    {"09", "10"},
                                                                                    {"99", "100"}})
        EXPECT_EQ(cli::next_revision(one), next) << one;
    for (const char* other : {"", "A1", "Ab", "1.2", "first", "-", "\xC3\x84"})
        EXPECT_FALSE(cli::next_revision(other)) << other;
}

TEST(Revision, IsKeptBesideThePacket) {
    EXPECT_EQ(cli::kept_path("jobs/arch.pdf", "A"), "jobs/arch-rev-A.pdf");
    EXPECT_EQ(cli::kept_path("arch.pdf", "../x"), "arch-rev-..%2Fx.pdf");
    std::set<fs::path> names;
    for (const char* revision : {"A/1", "A-1", "A 1", "A:1", "A\\1", "A%2F1", "A%1"})
        EXPECT_TRUE(names.insert(cli::kept_path("arch.pdf", revision)).second) << revision;
}

class Revisions : public testing::Test {
protected:
    Revisions() { write("A", "6 in"); }
    void write(const std::string& revision, const std::string& rise, const std::string& number = "K-7") const {
        std::string text = good_job;
        text.replace(text.find("\"B\""), 3, '"' + revision + '"');
        text.replace(text.find("\"6 in\""), 6, '"' + rise + '"');
        spill(job(), text.replace(text.find("K-7"), 3, number));
    }
    fs::path job() const { return folder_ / "arch.toml"; }
    fs::path pdf() const { return folder_ / "arch.pdf"; }
    fs::path kept(const std::string& revision) const { return folder_ / ("arch-rev-" + revision + ".pdf"); }
    Outcome build(const std::vector<std::string>& more = {}) const {
        std::vector<std::string> words = {"build", job().string()};
        words.insert(words.end(), more.begin(), more.end());
        return run_in_process(words);
    }
    int verified(const fs::path& packet) const { return run_in_process({"verify", packet.string()}).status; }
    void expect_refused(const std::string& why, const std::vector<std::string>& more = {}) const {
        const std::string before = fs::exists(pdf()) ? slurp(pdf()) : "";
        const Outcome outcome = build(more);
        EXPECT_EQ(outcome.status, 2) << outcome.out;
        EXPECT_TRUE(holds(outcome.err, why)) << outcome.err;
        EXPECT_EQ(outcome.out, "");
        EXPECT_TRUE((fs::exists(pdf()) ? slurp(pdf()) : "") == before);
    }
    const Folder folder_;
};

TEST_F(Revisions, AStoryFromAToC) {
    EXPECT_EQ(build().status, 0);
    const std::string a = slurp(pdf());
    // Unchanged it is built as often as one likes, a remark more or less.
    EXPECT_EQ(build().status, 0);
    EXPECT_EQ(slurp(pdf()), a);
    // Measured again.
    write("A", "6 1/8 in");
    expect_refused(pdf().string() + " is revision A of this job, and the job has changed since:\n");
    expect_refused("    A: rise was 6 in, now 6-1/8 in: ");
    expect_refused("write revision = \"B\" in the job file, or choose another place with --out");
    expect_refused("revision = \"B\"", {"--force"});
    expect_refused("revision = \"B\"", {"--only", "strips"});
    EXPECT_FALSE(fs::exists(kept("A")));
    write("B", "6 1/8 in");
    const Outcome outcome = build();
    EXPECT_EQ(outcome.status, 0) << outcome.err;
    EXPECT_TRUE(holds(outcome.out, kept("A").string() + ": revision A, kept\n")) << outcome.out;
    EXPECT_EQ(slurp(kept("A")), a);
    const std::string b = slurp(pdf());
    // It tells what changed, on one page more, and that page can be had again.
    EXPECT_EQ(build({"--only", "changes", "--out", (folder_ / "page.pdf").string()}).status, 0);
    // The revision before travels on in it.
    EXPECT_EQ(build().status, 0);
    EXPECT_EQ(slurp(pdf()), b);
    EXPECT_EQ(build({"--only", "strips"}).status, 0);
    EXPECT_EQ(verified(folder_ / "arch-part.pdf"), 0);
    write("C", "6 1/4 in");
    EXPECT_EQ(build().status, 0);
    EXPECT_EQ(slurp(kept("B")), b);
    for (const fs::path& packet : {kept("A"), kept("B"), pdf()}) EXPECT_EQ(verified(packet), 0) << packet;
}

TEST_F(Revisions, ARevisionThatWasKeptDoesNotComeBack) {
    EXPECT_EQ(build().status, 0);
    write("B", "6 1/8 in");
    EXPECT_EQ(build().status, 0);
    write("A", "6 in");
    expect_refused("revision A was printed before and is kept as " + kept("A").string());
    expect_refused("write revision = \"C\" in the job file");
}

TEST_F(Revisions, ARevisionThatWasKeptHasNoOtherFiguresThoughThePacketIsGone) {
    EXPECT_EQ(build().status, 0);
    write("B", "6 1/8 in");
    EXPECT_EQ(build().status, 0);
    const std::string told = kept("A").string() + " is revision A of this job, and the job has changed since:\n";
    write("A", "6 1/4 in");
    fs::rename(pdf(), folder_ / "elsewhere.pdf");
    expect_refused(told);
    expect_refused(told, {"--force"});
    // Neither where the packet was changed and is replaced by force.
    std::string bytes = slurp(folder_ / "elsewhere.pdf");
    bytes[bytes.size() / 2] = static_cast<char>(bytes[bytes.size() / 2] ^ 1);
    spill(pdf(), bytes);
    expect_refused(told, {"--force"});
    fs::remove(pdf());
    // With the same figures it is that revision.
    write("A", "6 in");
    EXPECT_EQ(build().status, 0);
}

// "Cannot be read right now" is not "none of ours": revision A would be gone.
TEST_F(Revisions, WhatCannotBeReadNowIsNotReplacedByForceOrWithout) {
    EXPECT_EQ(build().status, 0);
    const std::string a = slurp(pdf());
    write("B", "6 1/8 in");
    using disk::Operation;
    for (const auto& [failing, error] : std::vector<std::pair<Operation, int>>{{Operation::fork, EAGAIN},
                                                                               {Operation::pipe, EMFILE},
                                                                               {Operation::wait, ECHILD},
                                                                               {Operation::read, EIO},
                                                                               {Operation::open, EMFILE},
                                                                               {Operation::open, EACCES}}) {
        const disk::Gated gated([&, kind = failing, number = error](Operation asked, const fs::path& what) {
            return asked == kind && (what == pdf() || what.empty()) ? number : 0;
        });
        for (const char* how : {"--force", "--half"}) expect_refused(pdf().string(), {how});
        EXPECT_FALSE(fs::exists(kept("A")));
    }
    EXPECT_EQ(build({"--force"}).status, 0);
    EXPECT_EQ(slurp(kept("A")), a);
}

TEST_F(Revisions, AKeptPacketHasThePermissionsThatItHad) {
    EXPECT_EQ(build().status, 0);
    fs::permissions(pdf(), fs::perms{0600});
    write("B", "6 1/8 in");
    EXPECT_EQ(build().status, 0);
    for (const fs::path& packet : {pdf(), kept("A")})
        EXPECT_EQ(fs::status(packet).permissions(), fs::perms{0600}) << packet;
}

TEST_F(Revisions, NothingElseOfThatNameIsWrittenOver) {
    EXPECT_EQ(build().status, 0);
    spill(kept("A"), "a letter");
    write("B", "6 1/8 in");
    expect_refused("revision A is to be kept as " + kept("A").string() + ", where another file stands");
    EXPECT_EQ(slurp(kept("A")), "a letter");
    // The very packet may stand there.
    fs::remove(kept("A"));
    fs::copy(pdf(), kept("A"));
    EXPECT_EQ(build().status, 0);
}

TEST_F(Revisions, AnotherJobDoesNotTakeThePlace) {
    EXPECT_EQ(build().status, 0);
    write("B", "6 in", "K-8");
    expect_refused(pdf().string() + " is the packet of another job, K-7; choose another place with --out");
    EXPECT_EQ(build({"--out", (folder_ / "other.pdf").string()}).status, 0);
}

TEST_F(Revisions, OneThatFollowsNoOrderIsLeftToTheUser) {
    write("A1", "6 in");
    EXPECT_EQ(build().status, 0);
    write("A1", "6 1/8 in");
    expect_refused("write another revision in the job file");
}

TEST_F(Revisions, AChangedPacketIsReplacedOnlyWhenForced) {
    EXPECT_EQ(build().status, 0);
    std::string bytes = slurp(pdf());
    bytes[bytes.size() / 2] = static_cast<char>(bytes[bytes.size() / 2] ^ 1);
    spill(pdf(), bytes);
    expect_refused(pdf().string() + " was changed after it was written");
    EXPECT_EQ(build({"--force"}).status, 0);
    EXPECT_EQ(verified(pdf()), 0);
    EXPECT_FALSE(fs::exists(kept("A")));
}

TEST_F(Revisions, APartOrAFormNeverTakesAPacketsPlace) {
    EXPECT_EQ(build().status, 0);
    const std::string told = pdf().string() + " is the packet of job K-7, revision A; choose another place with --out";
    expect_refused(told, {"--only", "strips", "--out", pdf().string(), "--force"});
    for (const char* command : {"field-sheet", "printer-check"}) {
        const Outcome outcome = run_in_process({command, "--out", pdf().string()});
        EXPECT_EQ(outcome.status, 2);
        EXPECT_TRUE(holds(outcome.err, told)) << outcome.err;
    }
    EXPECT_EQ(verified(pdf()), 0);
}

TEST_F(Revisions, WordsAndPrintersMayChange) {
    EXPECT_EQ(build().status, 0);
    fs::create_directories(folder_ / "ours/en");
    spill(folder_ / "shop.toml", "words = \"ours\"\n");
    spill(folder_ / "ours/en/shop.toml", "name = [\"Weir & Daughters\"]\n");
    const std::string before = slurp(pdf());
    EXPECT_EQ(build().status, 0);
    EXPECT_NE(slurp(pdf()), before);
    EXPECT_EQ(verified(pdf()), 0);
}

}  // namespace
}  // namespace kerfpacket::tests
