// The program itself: a system call fails or ends it, it is killed at random times, it races with itself, its streams
// are closed, its disk is full.

#include <gtest/gtest.h>

#include <signal.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <algorithm>
#include <array>
#include <chrono>
#include <iostream>
#include <random>
#include <set>
#include <thread>

#include <fmt/format.h>

#include "faults/shop_floor.h"
#include "support/sanitizer.h"

namespace kerfpacket::tests {
namespace {

using Clock = std::chrono::steady_clock;

std::string environment(const fs::path& folder, long at, const std::string& error, const fs::path& count = {}) {
    std::string text = fmt::format("XDG_CONFIG_HOME={} LD_PRELOAD={} FAULT_AT={} FAULT_ERROR={}",
                                   quoted(folder.string()), quoted(KERFPACKET_SHIM), at, error);
    if (!count.empty()) text += " FAULT_COUNT=" + quoted(count.string());
    return text;
}

Outcome program(const Scene& scene, const fs::path& folder, const std::string& before) {
    std::vector<std::string> words = scene.command(folder);
    words.insert(words.begin(), KERFPACKET_PROGRAM);
    const Folder lines;
    spill(lines / "lines", scene.input);
    return run_program(words, before, lines / "lines");
}

/// How many calls the scene's command makes.
long calls_of(const Scene& scene) {
    const Folder folder, count;
    scene.set(folder.path());
    EXPECT_EQ(program(scene, folder.path(), environment(folder.path(), 0, "5", count / "count")).status, 0);
    return std::stol(slurp(count / "count"));
}

int verified(const fs::path& packet) { return run_program({KERFPACKET_PROGRAM, "verify", packet.string()}).status; }

/// Of a revision that was begun and ended somehow: A is there, where it was or kept; a packet that is there is whole.
void expect_nothing_lost(const fs::path& folder, const std::string& packet_a, const std::string& which) {
    int found_a = 0;
    for (const auto& [name, bytes] : contents(folder, false)) {
        if (!name.ends_with(".pdf")) continue;
        if (bytes == packet_a) ++found_a;
        else EXPECT_EQ(verified(folder / name), 0) << which << name;
    }
    EXPECT_GE(found_a, 1) << which;
}

TEST(Program, EveryCallFailsOnce) {
    if (address_sanitizer) GTEST_SKIP() << "the sanitizer's library must be loaded first";
    int cases = 0, refused = 0, in_place = 0;
    for (const Scene& scene : scenes()) {
        const long calls = calls_of(scene);
        const long step = all_cases() ? 1 : std::max(1L, calls / 6);
        Folder done;
        scene.set(done.path());
        ASSERT_EQ(program(scene, done.path(), environment(done.path(), 0, "5")).status, 0);
        const auto after_all = contents(done.path(), false);
        for (long i = 1; i <= calls; i += step) {
            const Folder folder;
            scene.set(folder.path());
            const auto before = contents(folder.path(), false);
            const Outcome outcome = program(scene, folder.path(), environment(folder.path(), i, "5"));
            auto after = contents(folder.path(), false);
            if (!scene.kept.empty()) after.erase(scene.kept);
            const std::string which = fmt::format("{}, call {} of {}\n{}", scene.name, i, calls, outcome.err);
            ++cases;
            if (outcome.status == 2) {
                ++refused;
                EXPECT_TRUE(after == before) << which;
                EXPECT_GT(outcome.err.size(), 20U) << which;
            } else {
                ++in_place;
                EXPECT_TRUE(outcome.status == 0 || outcome.status == 3) << which;
                EXPECT_TRUE(after == after_all) << which;
            }
        }
        std::cout << scene.name << ": " << calls << " calls\n";
    }
    std::cout << fmt::format("{} cases: {} refused, {} in place\n", cases, refused, in_place);
    EXPECT_GT(refused, 0);
    EXPECT_GT(in_place, 0);
}

TEST(Program, KilledAtACallLosesNothing) {
    if (address_sanitizer) GTEST_SKIP() << "the sanitizer's library must be loaded first";
    const Scene revise = scenes().at(1);
    const long calls = calls_of(revise);
    const long step = all_cases() ? 1 : std::max(1L, calls / 12);
    int cases = 0;
    for (long i = 1; i <= calls; i += step, ++cases) {
        const Folder folder;
        revise.set(folder.path());
        const std::string packet_a = slurp(folder / "job.pdf");
        program(revise, folder.path(), environment(folder.path(), i, "kill"));
        const std::string which = fmt::format("killed at call {} of {}: ", i, calls);
        expect_nothing_lost(folder.path(), packet_a, which);
        // The next build is not kept from its work by what was left behind, and sweeps it.
        const Outcome again = run_program({KERFPACKET_PROGRAM, "build", (folder / "job.toml").string()});
        EXPECT_EQ(again.status, 0) << which << again.err;
        EXPECT_TRUE(contents(folder.path()) == contents(folder.path(), false)) << which;
        EXPECT_EQ(slurp(folder / "job-rev-A.pdf"), packet_a) << which;
    }
    std::cout << cases << " kills\n";
}

/// Starts the program and does not wait; its words go nowhere.
pid_t started(std::vector<std::string> words) {
    words.insert(words.begin(), KERFPACKET_PROGRAM);
    std::vector<char*> arguments;
    for (std::string& word : words) arguments.push_back(word.data());
    arguments.push_back(nullptr);
    const pid_t child = fork();
    if (child != 0) return child;
    if (freopen("/dev/null", "w", stdout) == nullptr || freopen("/dev/null", "w", stderr) == nullptr) _exit(9);
    execv(KERFPACKET_PROGRAM, arguments.data());
    _exit(9);
}

/// Its exit status; 128 and the signal's number where one ended it, as a shell tells it.
int ended(pid_t child) {
    int status = 0;
    EXPECT_EQ(waitpid(child, &status, 0), child);
    return WIFEXITED(status) ? WEXITSTATUS(status) : 128 + WTERMSIG(status);
}

TEST(Program, EndedByASignalTellsItAndTidiesUp) {
    const int times = all_cases() ? 300 : 24;
    const Scene revise = scenes().at(1);
    std::mt19937 random(16);
    Clock::duration takes{};
    {
        const Folder folder;
        revise.set(folder.path());
        const auto from = Clock::now();
        ASSERT_EQ(ended(started(revise.command(folder.path()))), 0);
        takes = Clock::now() - from;
    }
    std::map<int, int> endings;
    for (int i = 0; i < times; ++i) {
        const Folder folder;
        revise.set(folder.path());
        const std::string packet_a = slurp(folder / "job.pdf");
        const int signal = std::array{SIGINT, SIGTERM, SIGHUP, SIGKILL}.at(static_cast<std::size_t>(i) % 4);
        const pid_t child = started(revise.command(folder.path()));
        std::this_thread::sleep_for(takes * static_cast<int>(random() % 1000) / 900);
        kill(child, signal);
        const int status = ended(child);
        ++endings[status];
        const std::string which = fmt::format("signal {}, status {}: ", signal, status);
        EXPECT_TRUE(status == 0 || status == 128 + signal) << which;
        expect_nothing_lost(folder.path(), packet_a, which);
        if (signal != SIGKILL) { EXPECT_TRUE(contents(folder.path()) == contents(folder.path(), false)) << which; }
    }
    for (const auto& [status, count] : endings) std::cout << "status " << status << ": " << count << "\n";
    EXPECT_GT(endings.size(), 1U);
}

/// Revisions of one job, built at the same moment over A.
void race(const std::vector<std::string>& revisions, std::map<std::string, int>& told) {
    const Folder folder;
    set_revision_a(folder.path());
    const std::string packet_a = slurp(folder / "job.pdf");
    std::vector<pid_t> children;
    for (const std::string& revision : revisions) {
        const std::string job = (folder / ("job-" + revision + ".toml")).string();
        spill(job, job_of(revision));
        children.push_back(started({"build", job, "--out", (folder / "job.pdf").string()}));
    }
    std::vector<int> statuses;
    for (const pid_t child : children) statuses.push_back(ended(child));
    std::string all;
    for (const int status : statuses) all += fmt::format("{} ", status);
    ++told[all];
    expect_nothing_lost(folder.path(), packet_a, all);
    EXPECT_EQ(slurp(folder / "job-rev-A.pdf"), packet_a) << all;
    // Whoever says that it has written has: its packet is there, or kept.
    std::set<std::string> found;
    for (const auto& [name, bytes] : contents(folder.path(), false))
        if (name.ends_with(".pdf"))
            for (const std::string& revision : revisions)
                if (run_program({KERFPACKET_PROGRAM, "verify", (folder / name).string()})
                        .out.find(", revision " + revision + ",") != std::string::npos)
                    found.insert(revision);
    for (std::size_t i = 0; i < revisions.size(); ++i) {
        EXPECT_TRUE(statuses[i] == 0 || statuses[i] == 2) << all;
        EXPECT_EQ(statuses[i] == 0, found.contains(revisions[i])) << revisions[i] << ", " << all;
    }
    EXPECT_FALSE(found.empty()) << all;
    EXPECT_TRUE(contents(folder.path()) == contents(folder.path(), false)) << all;
}

TEST(Program, RacesLoseNothing) {
    const int times = all_cases() ? 200 : 10;
    std::map<std::string, int> told;
    for (int i = 0; i < times; ++i)
        race(i % 2 == 0 ? std::vector<std::string>{"B", "C"} : std::vector<std::string>{"B", "C", "D"}, told);
    for (const auto& [statuses, count] : told) std::cout << "ended with " << statuses << ": " << count << "\n";
}

TEST(Program, OfTwoAtOnceOneIsToldWhoHasThePacket) {
    const Folder folder;
    set_revision_a(folder.path());
    // The first is stopped in the middle of its work. One that was done before that is started again.
    const auto give_up = Clock::now() + std::chrono::seconds(60);
    pid_t first = 0;
    // It writes its name into the lock when it has it.
    const auto at_work = [&] {
        const auto all = contents(folder.path());
        return std::any_of(all.begin(), all.end(), [&](const auto& file) {
            return file.second.starts_with(fmt::format("process {} ", first));
        });
    };
    for (bool stopped = false; !stopped;) {
        ASSERT_LT(Clock::now(), give_up);
        first = started({"build", (folder / "job.toml").string()});
        const auto soon = Clock::now() + std::chrono::seconds(5);
        while (!at_work() && Clock::now() < soon) std::this_thread::sleep_for(std::chrono::microseconds(200));
        kill(first, SIGSTOP);
        siginfo_t state{};
        ASSERT_EQ(waitid(P_PID, static_cast<id_t>(first), &state, WSTOPPED | WEXITED | WNOWAIT), 0);
        stopped = state.si_code == CLD_STOPPED && at_work();
        if (!stopped) {
            kill(first, SIGCONT);
            EXPECT_EQ(ended(first), 0);
        }
    }
    const Outcome second = run_program({KERFPACKET_PROGRAM, "build", (folder / "job.toml").string()});
    kill(first, SIGCONT);
    EXPECT_EQ(ended(first), 0);
    EXPECT_EQ(second.status, 2);
    EXPECT_NE(second.err.find(fmt::format("{} is being written by another kerfpacket, process {} on the computer ",
                                          (folder / "job.pdf").string(), first)),
              std::string::npos)
        << second.err;
}

TEST(Program, WrittenIsToldAsWrittenWhateverBecomesOfTheResults) {
    for (const char* end : {">/dev/full", ">&-", "| true"}) {
        const Folder folder;
        spill(folder / "job.toml", job_of("A"));
        // The status of the program itself, not of what it is piped into.
        const std::string line =
            fmt::format("set -o pipefail; {} build {} {} 2>{}", quoted(KERFPACKET_PROGRAM),
                        quoted((folder / "job.toml").string()), end, quoted((folder / "said").string()));
        const Outcome outcome = run_program({"bash", "-c", line});
        const std::string said = slurp(folder / "said");
        if (std::string(end) != "| true") {
            EXPECT_EQ(outcome.status, 3) << end << said;
            EXPECT_NE(said.find("caution: all is written, but the results could not be told"), std::string::npos)
                << said;
        }
        EXPECT_EQ(verified(folder / "job.pdf"), 0) << end;
        EXPECT_TRUE(contents(folder.path()) == contents(folder.path(), false)) << end;
        const Outcome check = run_program({"bash", "-c",
                                           fmt::format("{} check {} >/dev/full", quoted(KERFPACKET_PROGRAM),
                                                       quoted((folder / "job.toml").string()))});
        EXPECT_EQ(check.status, 2);
    }
}

TEST(Program, AFileThatMayNotBeSoLargeIsTold) {
    const Folder folder;
    spill(folder / "job.toml", job_of("A"));
    const Outcome outcome = run_program(
        {"sh", "-c",
         "ulimit -f 8; exec " + quoted(KERFPACKET_PROGRAM) + " build " + quoted((folder / "job.toml").string())});
    EXPECT_EQ(outcome.status, 2);
    EXPECT_NE(
        outcome.err.find("cannot write " + (folder / "job.pdf").string() + ": the file is larger than is allowed"),
        std::string::npos)
        << outcome.err;
    EXPECT_EQ(contents(folder.path()).size(), 1U);
}

}  // namespace
}  // namespace kerfpacket::tests
