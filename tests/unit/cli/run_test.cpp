#include "cli/run.h"

#include <gtest/gtest.h>

#include "session.h"

namespace kerfpacket::tests {
namespace {

TEST(Run, NothingToDoIsAnError) {
    const Outcome outcome = run_in_process({});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_EQ(outcome.out, "");
    EXPECT_NE(outcome.err.find("subcommand"), std::string::npos) << outcome.err;
}

TEST(Run, HelpAndVersionAreAnswers) {
    const Outcome help = run_in_process({"--help"});
    EXPECT_EQ(help.status, 0);
    EXPECT_EQ(help.err, "");
    for (const char* command : {"build", "check", "preview", "printer-check", "media"})
        EXPECT_NE(help.out.find(command), std::string::npos) << command;
    EXPECT_EQ(run_in_process({"--version"}).out, "kerfpacket 0.17.0\n");
}

TEST(Run, WrongUseIsTwo) {
    EXPECT_EQ(run_in_process({"build"}).status, 2);
    EXPECT_EQ(run_in_process({"bild", "x.toml"}).status, 2);
    EXPECT_EQ(run_in_process({"media", "--loud"}).status, 2);
    EXPECT_EQ(run_in_process({"preview", "x.toml", "--dpi", "many"}).status, 2);
    EXPECT_EQ(run_in_process({"preview", "x.toml", "--dpi", "0"}).status, 2);
}

TEST(Run, MediaAreListedWithTheirNames) {
    const Outcome outcome = run_in_process({"media"});
    EXPECT_EQ(outcome.status, 0);
    // PWG 5101.1.
    for (const char* name : {"na_letter_8.5x11in", "na_legal_8.5x14in", "na_ledger_11x17in", "iso_a4_210x297mm"})
        EXPECT_NE(outcome.out.find(name), std::string::npos) << name;
}

TEST(Run, AMissingJobIsTold) {
    const Outcome outcome = run_in_process({"check", "no-such-job.toml"});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_EQ(outcome.out, "");
    EXPECT_NE(outcome.err.find("no-such-job.toml"), std::string::npos) << outcome.err;
}

TEST(Run, MissingResourcesAreTold) {
    const Folder folder;
    spill(folder / "job.toml", good_job);
    const Outcome outcome = run_in_process({"check", (folder / "job.toml").string()}, folder.path());
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.err.find("is missing: it belongs beside the program"), std::string::npos) << outcome.err;
}

TEST(Run, FullStandardOutputIsAnError) {
    EXPECT_EQ(run_program({"sh", "-c", std::string(KERFPACKET_PROGRAM) + " media >/dev/full"}).status, 2);
}

TEST(Run, ProgramFolderIsWhereThisTestIs) {
    EXPECT_TRUE(fs::exists(cli::program_folder()));
    EXPECT_FALSE(fs::is_empty(cli::program_folder()));
}

}  // namespace
}  // namespace kerfpacket::tests
