// Quiet, colour, examples, slips of the keyboard, what to do next: as clig.dev and no-color.org ask for.
#include "cli/manners.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "job/diagnostics.h"
#include "session.h"
#include "support/variable.h"

namespace kerfpacket::tests {
namespace {

/// The job with labels to print: ten on a sheet.
std::string labelled(std::string job) {
    const std::string ten =
        "\n[printer.labels]\nmedia = \"na_letter_8.5x11in\"\ncolumns = 2\nrows = 5\nwidth = \"4 in\"\n"
        "height = \"2 in\"\nleft = \"1/4 in\"\ntop = \"1/2 in\"\n\n[[opening]]";
    return job.replace(job.find("\n[[opening]]"), 12, ten);
}

/// A folder with two jobs, as the examples name them.
class JobFolder : public Folder {
public:
    JobFolder() {
        spill(*this / "arch.toml", labelled(good_job));
        std::string second = good_job;
        second.replace(second.find("K-7"), 3, "K-8");
        spill(*this / "stair.toml", second);
    }
    /// A line as typed into a shell in that folder.
    Outcome typed(const std::string& line, const std::string& before = "") const {
        const std::string program = quoted(KERFPACKET_PROGRAM);
        return run_program({"sh", "-c", "cd " + quoted(path().string()) + " && " + before + program + " " + line},
                           "XDG_CONFIG_HOME=" + quoted(path().string()));
    }
};

Outcome watched(const std::vector<std::string>& words) {
    std::ostringstream out, err;
    cli::Console console(out, err, true, std::chrono::hours(1));
    const int status = cli::run(words, console, KERFPACKET_BUILD_DIR);
    return {status, out.str(), err.str()};
}

std::vector<std::string> lines_after(const std::string& text, const std::string& head) {
    std::vector<std::string> lines;
    std::istringstream all(text.substr(std::min(text.size(), text.find(head))));
    for (std::string line; std::getline(all, line);) lines.push_back(line);
    return lines;
}

TEST(Manners, EveryHelpEndsWithExamplesThatRun) {
    const std::vector<std::string> commands{"",         "build", "check",         "preview", "field-sheet", "stops",
                                            "outlines", "stock", "printer-check", "media",   "schema",      "complete",
                                            "verify",   "start", "labels",        "bid"};
    const JobFolder folder;
    int run = 0;
    for (const std::string& command : commands) {
        const std::string help = folder.typed(command + " --help").out;
        ASSERT_NE(help.find("Examples:\n"), std::string::npos) << command;
        for (const std::string& line : lines_after(help, "Examples:\n")) {
            constexpr std::string_view name = "  kerfpacket ";
            if (!line.starts_with(name)) continue;
            // It asks, and nobody is there to answer.
            if (line.find("start ") != std::string::npos && line.find("--example") == std::string::npos) continue;
            ++run;
            const Outcome outcome = folder.typed(line.substr(name.size()));
            EXPECT_EQ(outcome.status, 0) << line << "\n" << outcome.err;
        }
    }
    EXPECT_GE(run, 25);
    EXPECT_EQ(folder.typed("verify piped.pdf arch.toml").status, 0);
}

TEST(Manners, EveryCommandHasExamplesAndManners) {
    std::istringstream help(run_in_process({"--help"}).out);
    bool below = false;
    int looked_at = 0;
    for (std::string line; std::getline(help, line);) {
        if (line.starts_with("Subcommands:")) below = true;
        else if (!line.starts_with("  ")) below = false;
        else if (below && line[2] != ' ') {
            ++looked_at;
            const std::string told = run_in_process({line.substr(2, line.find(' ', 2) - 2), "--help"}).out;
            for (const char* part : {"Examples:\n", "--quiet", "--color"})
                EXPECT_NE(told.find(part), std::string::npos) << line << part;
        }
    }
    EXPECT_GE(looked_at, 10);
}

TEST(Manners, QuietTellsWhatIsWrongAndWhatWasAskedForAlone) {
    const JobFolder folder;
    const Outcome built = folder.typed("build arch.toml --quiet");
    EXPECT_EQ(built.status, 0);
    EXPECT_EQ(built.out + built.err, "");
    EXPECT_TRUE(fs::exists(folder / "arch.pdf"));
    EXPECT_NE(folder.typed("check arch.toml -q").out, "");
    const Outcome missing = folder.typed("check none.toml -q");
    EXPECT_EQ(missing.status, 2);
    EXPECT_NE(missing.err, "");
    spill(folder / "short.toml", good_job + "[stock]\nlengths = [\"5 ft\"]\nsplay = 1\n");
    EXPECT_NE(folder.typed("build short.toml --quiet").err.find(": error: "), std::string::npos);
}

TEST(Manners, HeadsOfMessagesAreColouredWhereAskedFor) {
    const JobFolder folder;
    const std::string missing = (folder / "none.toml").string();
    const Outcome always = run_in_process({"check", missing, "--color", "always"});
    EXPECT_EQ(always.err.find(missing + ": \x1b[1;31merror:\x1b[0m there is no such file\n"), 0U) << always.err;
    EXPECT_EQ(run_in_process({"check", missing}).err.find('\x1b'), std::string::npos);
    EXPECT_EQ(run_in_process({"check", missing, "--color", "sometimes"}).status, 2);
    const Variable terminal("TERM", "xterm");
    const Variable unset("NO_COLOR", "");
    EXPECT_NE(watched({"check", missing}).err.find('\x1b'), std::string::npos);
    EXPECT_EQ(watched({"check", missing, "--color", "never"}).err.find('\x1b'), std::string::npos);
    {
        const Variable dumb("TERM", "dumb");
        EXPECT_EQ(watched({"check", missing}).err.find('\x1b'), std::string::npos);
    }
    const Variable none("NO_COLOR", "1");
    EXPECT_EQ(watched({"check", missing}).err.find('\x1b'), std::string::npos);
    EXPECT_NE(watched({"check", missing, "--color", "always"}).err.find('\x1b'), std::string::npos);
}

TEST(Manners, EveryKindOfHeadIsColoured) {
    using job::Severity;
    for (const Severity severity : {Severity::error, Severity::refused, Severity::caution}) {
        std::ostringstream out, err;
        cli::Console console(out, err, false);
        console.behave({false, true});
        console.message(job::render({{severity, {1, 1}, job::Told("words: error: more"), job::Told("    : error: ")}},
                                    {"a.toml", "x"}));
        const std::string told = err.str();
        EXPECT_EQ(std::count(told.begin(), told.end(), '\x1b'), 2) << told;
        EXPECT_LT(told.find("\x1b[0m"), told.find("words")) << told;
    }
}

TEST(Manners, SlipsAreGuessed) {
    const JobFolder folder;
    const std::string job = (folder / "arch.toml").string();
    EXPECT_NE(run_in_process({"build", job, "--meda", "x"}).err.find("did you mean --media?\n"), std::string::npos);
    EXPECT_NE(run_in_process({"check", job, "--colour=always"}).err.find("did you mean --color?\n"), std::string::npos);
    EXPECT_EQ(run_in_process({"check", job, "--xyzzyplugh"}).err.find("did you mean"), std::string::npos);
    EXPECT_EQ(run_in_process({"check", job, "--color", "no"}).err.find("did you mean"), std::string::npos);
    for (const char* slip : {"arhc.toml", "arch"})
        EXPECT_NE(folder.typed(std::string("check ") + slip).err.find("did you mean \"arch.toml\"?"), std::string::npos)
            << slip;
    EXPECT_EQ(folder.typed("check quarry-road.toml").err.find("did you mean"), std::string::npos);
    spill(folder / "arch.pdf", "%PDF-");
    EXPECT_NE(folder.typed("verify arhc.pdf").err.find("did you mean arch.pdf?"), std::string::npos);
}

TEST(Manners, WhatToRunNextIsToldToAPersonAndRuns) {
    const Folder folder;
    const fs::path job = folder / "it's an arch.toml";
    spill(job, good_job);
    const Outcome checked = watched({"check", job.string()});
    const std::size_t at = checked.err.find("next: kerfpacket ");
    ASSERT_NE(at, std::string::npos) << checked.err;
    const std::string line = checked.err.substr(at + 17);
    EXPECT_EQ(run_program({"sh", "-c", quoted(KERFPACKET_PROGRAM) + " " + line}).status, 0) << line;
    EXPECT_TRUE(fs::exists(folder / "it's an arch.pdf"));
    EXPECT_EQ(watched({"check", job.string(), "-q"}).err, "");
    EXPECT_EQ(run_in_process({"check", job.string()}).err, "");
}

TEST(Manners, AJobMayComeByStandardInputWhereItHasAName) {
    const JobFolder folder;
    EXPECT_EQ(folder.typed("check - < arch.toml").out, folder.typed("check arch.toml").out);
    EXPECT_EQ(folder.typed("build - --out piped.pdf < arch.toml").status, 0);
    ASSERT_EQ(folder.typed("build arch.toml").status, 0);
    EXPECT_EQ(slurp(folder / "piped.pdf"), slurp(folder / "arch.pdf"));
    EXPECT_EQ(folder.typed("build - --only cover --out part.pdf < arch.toml").status, 0);
    const Outcome nameless = folder.typed("build - < arch.toml");
    EXPECT_EQ(nameless.status, 2);
    EXPECT_NE(nameless.err.find("give one with --out"), std::string::npos) << nameless.err;
    EXPECT_EQ(folder.typed("preview - < arch.toml").status, 2);
    EXPECT_EQ(folder.typed("preview - --contact-sheet --out pages < arch.toml").status, 0);
    const Outcome empty = folder.typed("check - < /dev/null");
    EXPECT_EQ(empty.status, 2);
    EXPECT_NE(empty.err.find("standard input: error: the file is empty"), std::string::npos) << empty.err;
    EXPECT_FALSE(fs::exists(folder / "-.pdf"));
}

/// Waits for what a program that was started writes.
std::string awaited(const fs::path& file) {
    for (int i = 0; i < 500 && (!fs::exists(file) || slurp(file).empty()); ++i)
        std::this_thread::sleep_for(std::chrono::milliseconds(10));
    return fs::exists(file) ? slurp(file) : "";
}

TEST(Manners, OpenShowsThePacketByTheDesktopsProgram) {
    const JobFolder folder;
    spill(folder / "xdg-open", "#!/bin/sh\necho \"$@\" $(ulimit -Sv) >\"$OPENED\"\n");
    fs::permissions(folder / "xdg-open", fs::perms::owner_all);
    const std::string path = "PATH=" + quoted(folder.path().string()) + ":$PATH OPENED=opened ";
    EXPECT_EQ(folder.typed("build arch.toml --open", path).status, 0);
    EXPECT_EQ(awaited(folder / "opened"), (folder / "arch.pdf").string() + " unlimited\n");
    const Outcome none = folder.typed("build arch.toml --open", "PATH=/nonexistent ");
    EXPECT_EQ(none.status, 3);
    EXPECT_NE(none.err.find("caution: written, but it cannot be opened: xdg-open: "), std::string::npos) << none.err;
}

}  // namespace
}  // namespace kerfpacket::tests
