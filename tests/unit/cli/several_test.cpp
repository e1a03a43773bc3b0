// Several jobs in one run: what each alone would give, in their order.
#include "cli/several.h"

#include <gtest/gtest.h>

#include <csignal>

#include "session.h"

namespace kerfpacket::tests {
namespace {

constexpr int many = 6;

class Jobs {
public:
    Jobs() {
        for (int i = 0; i < many; ++i) {
            std::string text = i == 3 ? short_stock_job : good_job;
            text.replace(text.find("K-7"), 3, "K-" + std::to_string(i));
            spill(folder / name(i), text);
        }
    }
    static std::string name(int i) { return "job" + std::to_string(i) + ".toml"; }
    std::vector<std::string> words(const std::string& command) const {
        std::vector<std::string> words{command};
        for (int i = 0; i < many; ++i) words.push_back((folder / name(i)).string());
        return words;
    }

    Folder folder;
};

TEST(Several, GiveWhatEachAloneGives) {
    const Jobs together, apart;
    const Outcome built = run_in_process(together.words("build"));
    std::string out, err;
    for (int i = 0; i < many; ++i) {
        const Outcome one = run_in_process({"build", (apart.folder / Jobs::name(i)).string()});
        EXPECT_EQ(one.status, i == 3 ? 3 : 0) << one.err;
        out += one.out;
        err += one.err;
        const std::string packet = "job" + std::to_string(i) + ".pdf";
        EXPECT_EQ(slurp(together.folder / packet), slurp(apart.folder / packet)) << i;
    }
    for (int i = 0; i < many; ++i)
        out += (apart.folder / Jobs::name(i)).string() + (i == 3 ? ": done, with cautions\n" : ": done\n");
    const auto moved = [&](std::string text) {
        const std::string from = apart.folder.path().string(), to = together.folder.path().string();
        for (std::size_t at; (at = text.find(from)) != std::string::npos;) text.replace(at, from.size(), to);
        return text;
    };
    EXPECT_EQ(built.status, 3);
    EXPECT_EQ(built.out, moved(out));
    EXPECT_EQ(built.err, moved(err));
}

TEST(Several, TheWorstStatusIsThatOfTheRun) {
    const Jobs jobs;
    std::vector<std::string> words = jobs.words("check");
    EXPECT_EQ(run_in_process(words).status, 3);
    words.insert(words.begin() + 1, (jobs.folder / "absent.toml").string());
    const Outcome outcome = run_in_process(words);
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(outcome.out.find("absent.toml: not done: errors\n"), std::string::npos) << outcome.out;
    EXPECT_NE(outcome.out.find(Jobs::name(5) + ": done\n"), std::string::npos) << outcome.out;
    EXPECT_NE(outcome.err.find("there is no such file"), std::string::npos) << outcome.err;
}

TEST(Several, WhatIsOfOneJobIsRefused) {
    const Jobs jobs;
    std::vector<std::string> words = jobs.words("build");
    words.insert(words.end(), {"--out", (jobs.folder / "a.pdf").string()});
    EXPECT_NE(run_in_process(words).err.find("--out names one packet"), std::string::npos);
    words = jobs.words("check");
    words.emplace_back("--json");
    EXPECT_NE(run_in_process(words).err.find("--json tells of one job"), std::string::npos);
    words = jobs.words("build");
    fs::create_symlink(jobs.folder / Jobs::name(0), jobs.folder / "again.toml");
    words.push_back((jobs.folder / "again.toml").string());
    const Outcome twice = run_in_process(words);
    EXPECT_EQ(twice.status, 2);
    EXPECT_NE(twice.err.find("is the same job as"), std::string::npos) << twice.err;
    EXPECT_FALSE(fs::exists(jobs.folder / "job0.pdf"));
}

TEST(Several, AJobThatEndsItsProcessEndsNoOther) {
    std::ostringstream out, err;
    cli::Console console(out, err, false);
    const auto status = cli::several(
        {"a", "b", "c"},
        [](const fs::path& job, cli::Console& own) {
            if (job == "b") std::raise(SIGKILL);
            own.result(job.string() + "\n");
            return cli::Status::done;
        },
        console);
    EXPECT_EQ(status, cli::Status::errors);
    EXPECT_EQ(out.str(), "a\nc\na: done\nb: not done: errors\nc: done\n");
    EXPECT_EQ(err.str(), "kerfpacket: b: its process ended before it was done\n");
}

TEST(Several, EndedBySignalsLeaveNothingHalfDone) {
    // A house, so that the signal comes while the packets are made: to the program alone, not to its children.
    const Folder folder;
    const std::string sample = slurp(fs::path(KERFPACKET_SOURCE_DIR) / "out-samples/all-shapes.toml");
    std::string words;
    for (const char* name : {"a.toml", "b.toml", "c.toml"}) {
        spill(folder / name, sample);
        words += quoted((folder / name).string()) + " ";
    }
    for (const char* wait : {"0.2", "0.6", "1.2"}) {
        const Outcome outcome = run_program({"sh", "-c",
                                             quoted(KERFPACKET_PROGRAM) + " build " + words + "& sleep " + wait +
                                                 "; kill -TERM $!; wait $!; "
                                                 "status=$?; sleep 0.5; exit $status"});
        EXPECT_TRUE(outcome.status == 128 + SIGTERM || outcome.status == 3) << outcome.status;
        for (const fs::directory_entry& entry : fs::directory_iterator(folder.path()))
            EXPECT_EQ(entry.path().string().find(".part"), std::string::npos) << entry.path();
    }
}

}  // namespace
}  // namespace kerfpacket::tests
