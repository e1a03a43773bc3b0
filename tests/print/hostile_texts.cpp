// Texts that were made to hurt, in every place where a text is read: sealed into packets for verify, and beside a job
// for build. A plain message, nothing written, bounded memory and time.

#include <gtest/gtest.h>

#include <algorithm>
#include <iostream>

#include <fmt/format.h>

#include "print/filed.h"
#include "print/run_on.h"
#include "print/tamper.h"
#include "support/sanitizer.h"

namespace kerfpacket::tests {
namespace {

std::string repeat(std::string_view part, int count) {
    std::string text;
    for (int i = 0; i < count; ++i) text += part;
    return text;
}

struct Hostile {
    std::string name, text;
};

std::vector<Hostile> hostile_texts() {
    const std::string dots = repeat(".a", 20'000);
    std::string keys, tables, lists = "a = [\n", strings;
    for (int i = 0; i < 60'000; ++i) keys += fmt::format("k{}=1\n", i);
    for (int i = 0; i < 30'000; ++i) tables += fmt::format("[t{}.a.b.c]\nd=1\n", i);
    for (int i = 0; i < 300; ++i) lists += repeat("[1],", 800) + "\n";
    for (int i = 0; i < 20'000; ++i) strings += fmt::format("\"\\u001b[2J{}\" = \"\\u202e{}\"\n", i, i);
    return {{"dots of a key", "a" + dots + " = 1\n"},
            {"dots in a line of their own", "\"a\"" + repeat(".\"a\"", 900) + " = \"x\"\n"},
            {"dots of a header", "[a" + dots + "]\n"},
            {"dots of a list's header", "[[a" + dots + "]]\n"},
            {"dots between braces", "a = {b" + dots + " = 1}\n"},
            {"headers and dots", repeat("[" + repeat("a.", 31) + "a]\nb.b = 1\n", 3000)},
            {"brackets", "a = " + std::string(20'000, '[')},
            {"brackets, a line each", "a = " + repeat("[\n", 300'000)},
            {"braces", "a = " + repeat("{a=", 1000)},
            {"keys", keys},
            {"tables", tables},
            {"lists", lists + "]\n"},
            {"a key given often", repeat("a = 1\n", 100'000)},
            {"openings", repeat("[[opening]]\n", 80'000)},
            {"broken lines", repeat("a = 4 ft\n", 100'000)},
            {"controls in words", strings},
            {"an endless line", "a = \"" + std::string(900'000, 'x') + "\"\n"},
            {"an endless string", "a = \"\"\"" + repeat("{x}\n", 240'000)},
            {"braces in words", "name = [\"" + repeat("{", 3900) + "\"]\n"},
            {"blanks", std::string(999'999, ' ') + "\n"},
            {"large numbers", repeat("a = 9e999999999\n", 60'000)},
            {"no text", "a = \"\xFF\xFE\"\n"},
            {"a name that is none", "[.]\n= \n[[\n"},
            {"quotes", repeat("\"\"\"\"\"\n", 100'000)},
            {"over 1 MB", std::string(1'000'001, '#')}};
}

void expect_bounded(const Ending& run, const std::string& which) {
    EXPECT_EQ(run.status, 2) << which << "\n" << run.out << run.err.substr(0, 500);
    EXPECT_FALSE(run.err.empty() && run.out.empty()) << which;
    EXPECT_EQ(run.out.find(": intact"), std::string::npos) << which;
    EXPECT_LT(run.megabytes, most_megabytes) << which;
    EXPECT_LT(run.seconds, most_seconds) << which;
    EXPECT_LT(run.err.size(), 200'000U) << which;
    const auto steers = [](char c) { return static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\t'; };
    EXPECT_TRUE(std::none_of(run.err.begin(), run.err.end(), steers)) << which;
}

struct Most {
    int runs = 0;
    double megabytes = 0, seconds = 0;
    void add(const Ending& run) {
        ++runs;
        megabytes = std::max(megabytes, run.megabytes);
        seconds = std::max(seconds, run.seconds);
    }
};

TEST(HostileTexts, SealedIntoPackets) {
    if (address_sanitizer) GTEST_SKIP() << "the sanitizer's memory is counted too";
    const std::string good = FiledPacket().bytes();
    Most most;
    for (const char* place : {"job.toml", "shop.toml", "printers.office.toml", "words.en.shop.toml"})
        for (const Hostile& hostile : hostile_texts()) {
            const Ending run = run_on(with_embedded(good, place, hostile.text));
            expect_bounded(run, fmt::format("{} in {}", hostile.name, place));
            most.add(run);
        }
    std::cout << fmt::format("{} packets: at most {:.0f} MB, {:.1f} s\n", most.runs, most.megabytes, most.seconds);
    EXPECT_GE(most.runs, 100);
}

TEST(HostileTexts, BesideAJob) {
    if (address_sanitizer) GTEST_SKIP() << "the sanitizer's memory is counted too";
    const FiledPacket packet;
    const std::string kept = packet.bytes();
    Most most;
    for (const fs::path& place : {packet.job(), packet.folder() / "shop.toml", packet.profile(), packet.words()}) {
        const std::string before = slurp(place);
        for (const Hostile& hostile : hostile_texts()) {
            spill(place, hostile.text);
            const Ending run = ending_of({"build", packet.job().string()});
            expect_bounded(run, fmt::format("{} in {}", hostile.name, place.string()));
            EXPECT_NE(run.err.find(place.string()), std::string::npos) << hostile.name << run.err.substr(0, 500);
            EXPECT_TRUE(packet.bytes() == kept) << hostile.name;
            most.add(run);
        }
        spill(place, before);
    }
    std::cout << fmt::format("{} builds: at most {:.0f} MB, {:.1f} s\n", most.runs, most.megabytes, most.seconds);
    EXPECT_GE(most.runs, 100);
}

}  // namespace
}  // namespace kerfpacket::tests
