// What the largest packets take of the machine's memory.

#include <gtest/gtest.h>

#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

#include <iostream>

#include <fmt/format.h>

#include "print/run_on.h"
#include "support/program.h"
#include "support/sanitizer.h"

namespace kerfpacket::tests {
namespace {

constexpr const char* head = R"([job]
number = "L-1"
title = "Long run"
revision = "A"
date = 2026-03-09
units = "in"

[saw]
blade_diameter = "12 in"
kerf = 0.118
)";

/// The most memory the program had at once while it built this job's packet, in MB; the packet's pages are counted.
double megabytes_for(const std::string& job) {
    const Folder folder;
    spill(folder / "job.toml", head + job);
    const std::string file = (folder / "job.toml").string();
    const std::string out = (folder / "out.txt").string();
    const pid_t child = fork();
    if (child == 0) {
        if (freopen(out.c_str(), "w", stderr) == nullptr || freopen("/dev/null", "w", stdout) == nullptr) _exit(9);
        execl(KERFPACKET_PROGRAM, "kerfpacket", "build", file.c_str(), static_cast<char*>(nullptr));
        _exit(9);
    }
    int status = 0;
    rusage used{};
    if (wait4(child, &status, 0, &used) != child) throw std::runtime_error("the program could not be waited for");
    const bool done = WIFEXITED(status) && (WEXITSTATUS(status) == 0 || WEXITSTATUS(status) == 3);
    EXPECT_TRUE(done) << slurp(folder / "out.txt");
    EXPECT_TRUE(fs::exists(folder / "job.pdf"));
    return static_cast<double>(used.ru_maxrss) / 1024;  // Linux counts kilobytes
}

TEST(Memory, FortyFeetOfStripsOnARoll) {
    if (address_sanitizer) GTEST_SKIP() << "the sanitizer's memory is counted too";
    const double used = megabytes_for(R"(
[printer]
strip_media = "custom_roll_62mm"

[[wall]]
id = "B"
radius = "60 ft"
angle = 38.2
side = "concave"

[wall.board]
material = "mdf"
thickness = "3/4 in"
width = "7-1/4 in"
spacing = "1/2 in"
)");
    std::cout << used << " MB\n";
    EXPECT_LT(used, 100);
}

constexpr const char* thirty_feet = R"(
[[opening]]
id = "A"
shape = "segmental"
span = "30 ft"
rise = "5 ft"
measured_to = "wall"
depth = "7-1/8 in"

[opening.liner]
material = "mdf"
thickness = "3/4 in"
spacing = "1/2 in"

[opening.casing]
width = "3-1/2 in"
)";

TEST(Memory, ATemplateThirtyFeetWideOnLetter) {
    if (address_sanitizer) GTEST_SKIP() << "the sanitizer's memory is counted too";
    const double used = megabytes_for(thirty_feet);
    std::cout << used << " MB\n";
    EXPECT_LT(used, 100);
}

TEST(Memory, ATemplateThirtyFeetWideOnARoll) {
    if (address_sanitizer) GTEST_SKIP() << "the sanitizer's memory is counted too";
    const double used =
        megabytes_for(std::string("\n[printer]\ntemplate_media = \"custom_roll_36in\"\n") + thirty_feet);
    std::cout << used << " MB\n";
    EXPECT_LT(used, 100);
}

/// No two alike, for what is alike shares its sheets.
std::string openings(int count, int feet, const char* rise) {
    std::string job = head;
    for (int i = 0; i < count; ++i)
        job += fmt::format(
            "[[opening]]\nid = \"A{}\"\nshape = \"segmental\"\nspan = \"{} in\"\nrise = \"{}\"\ndepth = \"5 "
            "in\"\n[opening.liner]\nmaterial = \"mdf\"\nthickness = \"3/4 in\"\nspacing = \"1/2 in\"\n"
            "[opening.casing]\nwidth = \"3-1/2 in\"\n",
            i, 12 * feet + i, rise);
    return job;
}

// Pages that wait are small, and each is let go when it is written.
TEST(Memory, SixtyOpeningsTakeLittleMoreThanOne) {
    if (address_sanitizer) GTEST_SKIP() << "the sanitizer's memory is counted too";
    const auto used_for = [](int count) {
        const Folder folder;
        spill(folder / "job.toml", openings(count, 5, "16 in"));
        const Ending run = ending_of({"build", (folder / "job.toml").string()});
        EXPECT_TRUE(run.status == 0 || run.status == 3) << run.err;
        return run.megabytes;
    };
    const double one = used_for(1), sixty = used_for(60);
    std::cout << fmt::format("one: {:.0f} MB, sixty: {:.0f} MB\n", one, sixty);
    EXPECT_LT(sixty - one, 30);  // 2,085 pages; 33 where what was let go kept its room
    EXPECT_GT(sixty, one);
}

// Within the bounds of kerfs and pages, yet every page shows where its sheet is among thousands.
TEST(Memory, AJobThatTakesTooMuchEndsTheProgramAndNoOther) {
    if (address_sanitizer) GTEST_SKIP() << "the sanitizer's memory is counted too";
    const Folder folder;
    spill(folder / "job.toml", openings(6, 150, "40 ft"));
    const Ending run = ending_of({"build", (folder / "job.toml").string()});
    std::cout << fmt::format("{:.0f} MB, {:.1f} s: {}", run.megabytes, run.seconds, run.err);
    EXPECT_EQ(run.status, 2);
    EXPECT_NE(run.err.find("out of memory: no more than 640 MB are used for a job; split it"), std::string::npos);
    EXPECT_LT(run.megabytes, 700);
    EXPECT_EQ(std::distance(fs::directory_iterator(folder.path()), fs::directory_iterator()), 1);
}

// Verify gives the making again three eighths more than the making may have.
TEST(Memory, WhatCouldBeBuiltCanBeMadeAgain) {
    if (address_sanitizer) GTEST_SKIP() << "the sanitizer's memory is counted too";
    const Folder folder;
    spill(folder / "job.toml", openings(4, 90, "15 ft"));
    const Ending built = ending_of({"build", (folder / "job.toml").string()});
    ASSERT_TRUE(built.status == 0 || built.status == 3) << built.err;
    const Ending verified = ending_of({"verify", (folder / "job.pdf").string()});
    EXPECT_EQ(verified.status, 0) << verified.err;
    std::cout << fmt::format("built: {:.0f} MB, {:.1f} s; verified: {:.0f} MB, {:.1f} s\n", built.megabytes,
                             built.seconds, verified.megabytes, verified.seconds);
    EXPECT_GT(built.megabytes, 200);
}

}  // namespace
}  // namespace kerfpacket::tests
