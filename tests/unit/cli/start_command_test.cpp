#include "cli/start.h"

#include <gtest/gtest.h>

#include <cerrno>
#include <set>
#include <sstream>

#include "cli/start/examples.h"
#include "cli/start/saved.h"
#include "disk/calls.h"
#include "job/read.h"
#include "job/text.h"
#include "plan/plan.h"
#include "session.h"
#include "talks.h"

// The command, with its files.
namespace kerfpacket::tests {
namespace {

using Lines = std::vector<std::string>;

cli::NextLine from(const Lines& lines) {
    return [lines, next = std::size_t{0}](const std::string& /*prompt*/) mutable -> std::optional<std::string> {
        return next < lines.size() ? std::optional(lines[next++]) : std::nullopt;
    };
}

struct Ran {
    cli::Status status = cli::Status::errors;
    std::string out;
    std::string err;
};

Ran run_start(const cli::StartChoice& choice, const Lines& lines) {
    std::ostringstream out, err;
    cli::Console console(out, err, false);
    Ran ran;
    ran.status = cli::start(choice, from(lines), console, KERFPACKET_BUILD_DIR);
    ran.out = out.str();
    ran.err = err.str();
    return ran;
}

cli::StartChoice into(const fs::path& file) {
    cli::StartChoice choice;
    choice.file = file.string();
    return choice;
}

const Lines arch = whole_talk({"1", "", "1", "45", "9 1/2"});

TEST(StartCommand, WritesAJobThatCheckAccepts) {
    const Folder folder;
    const Ran ran = run_start(into(folder / "arch.toml"), arch);
    EXPECT_EQ(ran.status, cli::Status::done) << ran.err;
    EXPECT_FALSE(fs::exists(folder / "arch.toml.part"));
    const Outcome check = run_in_process({"check", (folder / "arch.toml").string()});
    EXPECT_EQ(check.status, 0) << check.err << slurp(folder / "arch.toml");
    EXPECT_NE(ran.out.find("kerfpacket build"), std::string::npos);
}

TEST(StartCommand, NoLineIsWiderThanATerminal) {
    for (const std::string language : {"en", "es"}) {
        const Folder folder;
        cli::StartChoice choice = into(folder / "a.toml");
        choice.language = language;
        Lines curious;
        for (const std::string& line : arch) curious = curious + Lines{"?", line};
        const Ran ran = run_start(choice, curious);
        EXPECT_EQ(ran.status, cli::Status::done) << ran.out;
        std::istringstream lines(ran.out);
        int count = 0;
        for (std::string line; std::getline(lines, line); ++count)
            if (line.find(folder.path().string()) == std::string::npos) {
                EXPECT_LE(job::characters(line), 80U) << line;
            }
        EXPECT_GT(count, 60);
    }
}

TEST(StartCommand, NeverWritesOverAFile) {
    const Folder folder;
    spill(folder / "arch.toml", "mine\n");
    EXPECT_THROW(run_start(into(folder / "arch.toml"), arch), std::runtime_error);
    EXPECT_EQ(slurp(folder / "arch.toml"), "mine\n");
    EXPECT_THROW(run_start(into(folder / "arch.txt"), arch), std::runtime_error);
    spill(folder / "other.toml.part", "mine\n");
    EXPECT_THROW(run_start(into(folder / "other.toml"), arch), std::runtime_error);
    EXPECT_EQ(slurp(folder / "other.toml.part"), "mine\n");
    // One that appears while the questions are asked.
    std::ostringstream out, err;
    cli::Console console(out, err, false);
    auto next = from(arch);
    const cli::NextLine meanwhile = [&](const std::string& prompt) {
        if (prompt.starts_with("Another piece")) spill(folder / "new.toml", "mine\n");
        return next(prompt);
    };
    EXPECT_THROW(cli::start(into(folder / "new.toml"), meanwhile, console, KERFPACKET_BUILD_DIR), std::runtime_error);
    EXPECT_EQ(slurp(folder / "new.toml"), "mine\n");
    EXPECT_TRUE(fs::exists(folder / "new.toml.part")) << "the answers are kept";
}

TEST(StartCommand, GoesOnWhereItWasBrokenOff) {
    for (const std::size_t after : {std::size_t{1}, std::size_t{7}, std::size_t{10}, arch.size() - 1}) {
        const Folder folder;
        const auto cut = arch.begin() + static_cast<std::ptrdiff_t>(after);
        const Ran first = run_start(into(folder / "arch.toml"), {arch.begin(), cut});
        EXPECT_EQ(first.status, cli::Status::errors);
        EXPECT_NE(first.err.find("arch.toml.part"), std::string::npos) << first.err;
        EXPECT_FALSE(fs::exists(folder / "arch.toml"));
        const Ran then = run_start(into(folder / "arch.toml"), Lines{""} + Lines{cut, arch.end()});
        EXPECT_EQ(then.status, cli::Status::done) << after << then.out << then.err;
        EXPECT_FALSE(fs::exists(folder / "arch.toml.part"));
        EXPECT_EQ(slurp(folder / "arch.toml"), talk_of(arch).job);
    }
}

TEST(StartCommand, AnEarlierTalkKeepsItsLanguageAndMayBeDropped) {
    const Folder folder;
    cli::StartChoice spanish = into(folder / "arco.toml");
    spanish.language = "es";
    run_start(spanish, {"T-9", "Arco"});
    const Ran dropped = run_start(into(folder / "arco.toml"), {"no", "T-10"});
    EXPECT_NE(dropped.out.find("Una pregunta a la vez"), std::string::npos) << dropped.out;
    EXPECT_EQ(slurp(folder / "arco.toml.part").find("T-9"), std::string::npos);
    EXPECT_NE(slurp(folder / "arco.toml.part").find("number: T-10"), std::string::npos);
}

TEST(StartCommand, WhatNoLongerFitsIsAskedAgain) {
    const Folder folder;
    const std::string kept = cli::saved_text({}, "en") + "number: T-4\ntitle: Fern Row\nrevision: A\ndate: soon\n";
    spill(folder / "arch.toml.part", kept);
    const Ran ran = run_start(into(folder / "arch.toml"), {""});
    EXPECT_NE(ran.out.find("3 answers"), std::string::npos) << ran.out;
    EXPECT_EQ(ran.status, cli::Status::errors);
}

TEST(StartCommand, AFaultyShopFileIsToldBeforeAnythingIsAsked) {
    const Folder folder;
    spill(folder / "shop.toml", "[saw]\nkerf = 3\n");
    const Ran ran = run_start(into(folder / "arch.toml"), arch);
    EXPECT_EQ(ran.status, cli::Status::errors);
    EXPECT_NE(ran.err.find("shop.toml"), std::string::npos) << ran.err;
    EXPECT_EQ(ran.out, "");
}

TEST(StartCommand, ADiskThatFailsLosesNoAnswerThatWasKept) {
    int operations = 0;
    {
        const Folder folder;
        const disk::Gated counting([&](disk::Operation, const fs::path&) { return ++operations, 0; });
        run_start(into(folder / "a.toml"), arch);
    }
    ASSERT_GT(operations, 200);
    int failed = 0;
    // A sample all over, and all of the end, where the job is put in its place.
    for (int n = 1; n <= operations; n += n > operations - 25 ? 1 : 23) {
        const Folder folder;
        int count = 0;
        bool thrown = false;
        try {
            const disk::Gated gate([&](disk::Operation, const fs::path&) { return ++count == n ? EIO : 0; });
            run_start(into(folder / "a.toml"), arch);
        } catch (const std::exception&) { thrown = true; }
        failed += thrown ? 1 : 0;
        const bool written = fs::exists(folder / "a.toml");
        EXPECT_TRUE(written || thrown) << n;
        if (written) { EXPECT_EQ(slurp(folder / "a.toml"), talk_of(arch).job) << n; }
        if (fs::exists(folder / "a.toml.part")) { EXPECT_TRUE(cli::read_saved(slurp(folder / "a.toml.part"))) << n; }
    }
    EXPECT_GT(failed, 10);
}

/// Cautions that any piece of such a shape has, whatever its figures.
bool of_its_shape(const std::string& caution) {
    return caution == "tudor_radii" || caution == "horseshoe_entry" || caution == "reverse_bend";
}

TEST(StartCommand, EveryExampleIsPlannedAndFoundOk) {
    std::set<std::string_view> names;
    for (const cli::Example& example : cli::examples())
        for (const std::string language : {"en", "es"}) {
            const Folder folder;
            cli::StartChoice choice = into(folder / "example.toml");
            choice.example = example.name;
            choice.language = language;
            ASSERT_EQ(run_start(choice, {}).status, cli::Status::done);
            const std::string text = slurp(folder / "example.toml");
            const job::Reading reading = job::read_job({"job.toml", text});
            EXPECT_EQ(job::render(reading.diagnostics, {"job.toml", text}), "");
            const auto plan = plan::make_plan(reading.job);
            ASSERT_TRUE(plan) << text;
            EXPECT_TRUE(plan->refused.empty()) << text;
            for (const plan::Piece& piece : plan->pieces) {
                EXPECT_EQ(piece.bend.verdict, bend::Verdict::ok) << example.name;
                for (const plan::Caution& caution : piece.cautions)
                    EXPECT_TRUE(of_its_shape(caution.key)) << example.name << " " << caution.key;
            }
            names.insert(example.name);
        }
    for (const std::string_view shape : cli::question("shape").choices) EXPECT_TRUE(names.contains(shape)) << shape;
    EXPECT_TRUE(names.contains("wall"));
}

TEST(StartCommand, AnExampleHasItsNameAndIsNeverWrittenOver) {
    const Folder folder;
    const std::string before = "cd " + quoted(folder.path().string()) + " &&";
    EXPECT_EQ(run_program({KERFPACKET_PROGRAM, "start", "--example", "pointed"}, before).status, 0);
    EXPECT_TRUE(fs::exists(folder / "pointed.toml"));
    EXPECT_EQ(run_program({KERFPACKET_PROGRAM, "start", "--example", "pointed"}, before).status, 2);
    EXPECT_EQ(run_program({KERFPACKET_PROGRAM, "start", "--example", "round"}, before).status, 2);
}

TEST(StartCommand, WithoutATerminalReadsLines) {
    const Folder folder;
    std::string typed;
    for (const std::string& line : arch) typed += line + "\n";
    spill(folder / "answers", typed);
    const std::string file = (folder / "arch.toml").string();
    const Outcome ran = run_program(
        {"sh", "-c",
         quoted(KERFPACKET_PROGRAM) + " start " + quoted(file) + " <" + quoted((folder / "answers").string())});
    EXPECT_EQ(ran.status, 0) << ran.out << ran.err;
    EXPECT_EQ(slurp(file), talk_of(arch).job);
    // Killed, or at the end of what there is: what was answered is kept.
    const std::string other = (folder / "other.toml").string();
    const Outcome ended = run_program(
        {"sh", "-c", "printf 'T-4\\nFern Row\\ncut sho' | " + quoted(KERFPACKET_PROGRAM) + " start " + quoted(other)});
    EXPECT_EQ(ended.status, 2);
    EXPECT_NE(slurp(other + ".part").find("title: Fern Row\n"), std::string::npos);
    EXPECT_EQ(slurp(other + ".part").find("cut sho"), std::string::npos) << "a line without an end is no answer";
    const std::string killed = (folder / "killed.toml").string();
    run_program(
        {"sh", "-c",
         "(printf 'T-5\\n'; sleep 3) | timeout -s TERM 1 " + quoted(KERFPACKET_PROGRAM) + " start " + quoted(killed)});
    EXPECT_NE(slurp(killed + ".part").find("number: T-5\n"), std::string::npos);
}

}  // namespace
}  // namespace kerfpacket::tests
