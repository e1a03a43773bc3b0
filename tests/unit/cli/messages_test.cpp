// Slips of the command line and of a whole file, and what is said of them.
#include <gtest/gtest.h>

#include <algorithm>
#include <chrono>

#include "session.h"

namespace kerfpacket::tests {
namespace {

TEST(Messages, OfACommandThatIsNone) {
    const Outcome slip = run_in_process({"bulid", "arch.toml"});
    EXPECT_EQ(slip.status, 2);
    EXPECT_TRUE(slip.err.starts_with("kerfpacket: there is no command \"bulid\"; did you mean build?\n")) << slip.err;
    EXPECT_NE(run_in_process({"help"}).err.find("kerfpacket --help"), std::string::npos);
    EXPECT_NE(run_in_process({"new"}).err.find("kerfpacket start"), std::string::npos);
    EXPECT_NE(run_in_process({"arch.toml"}).err.find("kerfpacket build JOB"), std::string::npos);
    EXPECT_EQ(run_in_process({"\x1b[2J"}).err.find('\x1b'), std::string::npos);
    const Folder folder;
    spill(folder / "a\nb.toml", good_job);
    for (const char* command : {"build", "check", "preview", "verify"}) {
        const Outcome outcome = run_in_process({command, (folder / "a\nb.toml").string()});
        EXPECT_EQ(outcome.status, 2);
        EXPECT_TRUE(outcome.err.starts_with("kerfpacket: a line break stands in \"")) << outcome.err;
        EXPECT_EQ(std::count(outcome.err.begin(), outcome.err.end(), '\n'), 1) << outcome.err;
        EXPECT_EQ(outcome.out, "");
    }
}

TEST(Messages, OfOptions) {
    const Outcome strip = run_in_process({"build", "arch.toml", "--strip", "0"});
    EXPECT_EQ(strip.status, 2);
    EXPECT_NE(strip.err.find("strips are numbered from 1"), std::string::npos) << strip.err;
    EXPECT_LT(strip.err.size(), 200U) << strip.err;
    EXPECT_NE(run_in_process({"build", "arch.toml", "--from-cut", "0"}).err.find("cuts are numbered from 1"),
              std::string::npos);
    EXPECT_NE(run_in_process({"build", "arch.toml", "--out", "-"}).err.find("name a file"), std::string::npos);
    EXPECT_FALSE(fs::exists("-"));
}

TEST(Messages, OfPapersByTheirCommonNames) {
    const Folder folder;
    spill(folder / "a.toml", good_job);
    const std::vector<std::pair<const char*, const char*>> names{
        {"letter", "na_letter_8.5x11in"}, {"A4", "iso_a4_210x297mm"},     {"11x17", "na_ledger_11x17in"},
        {"17x11", "na_ledger_11x17in"},   {"Legal", "na_legal_8.5x14in"}, {"tabloid", "na_ledger_11x17in"}};
    for (const auto& [said, meant] : names) {
        const Outcome outcome = run_in_process({"check", (folder / "a.toml").string(), "--media", said});
        EXPECT_EQ(outcome.status, 2);
        EXPECT_NE(outcome.err.find(std::string("did you mean \"") + meant + "\"?"), std::string::npos) << outcome.err;
    }
}

TEST(Messages, OfEveryCharacterThatCannotBePrinted) {
    const Folder folder;
    std::string text = "# \u4E00 stands in a comment\n" + good_job;
    text.replace(text.find("Mill Lane"), 9, "Mill \u4E00 Lane");
    text.replace(text.find("revision = \"B\""), 14, "revision = \"\\u4E8C\"");
    text.replace(text.find("K-7"), 3, "K\u4E09");
    spill(folder / "a.toml", text);
    const Outcome outcome = run_in_process({"check", (folder / "a.toml").string()});
    EXPECT_EQ(outcome.status, 2);
    for (const char* told :
         {":3:12: error: the character \u4E09 (U+4E09)", ":4:15: error: the character \u4E00 (U+4E00)",
          ":5:12: error: the character \u4E8C (U+4E8C)"})
        EXPECT_NE(outcome.err.find(told), std::string::npos) << outcome.err;
    EXPECT_EQ(outcome.err.find(":1:"), std::string::npos) << outcome.err;
}

TEST(Messages, AreBounded) {
    const Folder folder;
    std::string text = good_job;
    for (int i = 0; i < 30'000; ++i) text += "key" + std::to_string(i) + " = 1\n";
    spill(folder / "a.toml", text);
    const Outcome outcome = run_in_process({"check", (folder / "a.toml").string()});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_LT(outcome.err.size(), 40'000U);
    EXPECT_TRUE(outcome.err.ends_with(": and 29900 more\n")) << outcome.err.substr(outcome.err.size() - 200);
}

TEST(Messages, FiveThousandOpeningsAreRefusedSoon) {
    const Folder folder;
    std::string text = good_job.substr(0, good_job.find("[[opening]]"));
    for (int i = 0; i < 5'000; ++i)
        text += "[[opening]]\nid = \"" + std::string(1, static_cast<char>('A' + i % 26)) + std::to_string(i % 100) +
                "\"\nshape = \"semicircular\"\nspan = 60\ndepth = 5\n[opening.liner]\nmaterial = \"mdf\"\nthickness = "
                "0.75\n";
    spill(folder / "a.toml", text);
    const auto begun = std::chrono::steady_clock::now();
    const Outcome outcome = run_in_process({"check", (folder / "a.toml").string()});
    EXPECT_LT(std::chrono::steady_clock::now() - begun, std::chrono::seconds(30));
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("the job has more than 100 openings and walls"), std::string::npos) << outcome.err;
}

}  // namespace
}  // namespace kerfpacket::tests
