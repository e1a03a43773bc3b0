// Files that nobody writes by hand: the program must refuse them in plain words, soon, and without falling over.
#include <algorithm>
#include <chrono>
#include <string>

#include <gtest/gtest.h>

#include "job/read.h"

using namespace kerfpacket;

namespace {

std::string repeat(std::string_view part, int count) {
    std::string text;
    for (int i = 0; i < count; ++i) text += part;
    return text;
}

/// Reads and renders; the time is bounded generously, for a slow machine under a checker.
job::Reading read(const std::string& text) {
    const auto start = std::chrono::steady_clock::now();
    const job::Source source{"hostile.toml", text};
    auto reading = job::read_job(source);
    EXPECT_FALSE(job::render(reading.diagnostics, source).empty());
    EXPECT_LT(std::chrono::steady_clock::now() - start, std::chrono::seconds(20));
    return reading;
}

void expect_refused(const std::string& text, std::string_view message) {
    const auto reading = read(text);
    ASSERT_EQ(reading.diagnostics.size(), 1U);
    EXPECT_EQ(reading.diagnostics.front().message, message);
    EXPECT_FALSE(reading.complete);
}

constexpr std::string_view too_deep = "this is nested more than 32 deep";

TEST(Hostile, AMegabyteOfBrackets) {
    expect_refused(std::string(1'000'000, '['), too_deep);
    expect_refused("a = " + std::string(900'000, '{'), too_deep);
}

TEST(Hostile, NestedListsOverManyLines) { expect_refused("a = " + repeat("[\n", 300'000), too_deep); }

// A dotted key makes a table within a table for each dot, which the parser alone does not bound.
TEST(Hostile, DottedKeys) {
    expect_refused("a" + repeat(".a", 400'000) + " = 1\n", too_deep);
    expect_refused("[a" + repeat(".a", 400'000) + "]\n", too_deep);
    expect_refused("\"a\"" + repeat(" . \"a\"", 100'000) + " = 1\n", too_deep);
}

TEST(Hostile, DottedKeysInNestedTables) {
    expect_refused("x = " + repeat("[\n{a" + repeat(".a", 30) + " = ", 200), too_deep);
}

TEST(Hostile, BracketsInStringsAndCommentsDoNotCount) {
    const auto reading = read("# " + std::string(500, '[') + "\na = \"" + std::string(500, '[') + "\\\"" +
                              std::string(500, '{') + "\"\nb = '''" + std::string(500, '[') + "\n''' # ]\n");
    ASSERT_EQ(reading.diagnostics.size(), 5U);  // two unknown keys; no job, no saw, no piece
    for (const auto& d : reading.diagnostics) EXPECT_NE(d.message, too_deep);
}

TEST(Hostile, OneLine) {
    expect_refused("a = \"" + std::string(900'000, 'x') + "\"\n", "the line is longer than 40000 characters");
}

TEST(Hostile, ThousandsOfMistakes) {
    const auto openings = read(repeat("[[opening]]\n", 20'000)).diagnostics;
    EXPECT_GT(openings.size(), 100U);
    EXPECT_TRUE(std::any_of(openings.begin(), openings.end(), [](const job::Diagnostic& d) {
        return d.at.line == 101 &&
               d.message == "the job has more than 100 openings and walls: what follows is not read";
    }));
    std::string keys;
    for (int i = 0; i < 20'000; ++i) keys += "k" + std::to_string(i) + " = 1\n";
    EXPECT_GT(read(keys).diagnostics.size(), 20'000U);
}

TEST(Hostile, ManyUnreadableLinesEndInTime) {
    std::string text;
    for (int i = 0; i < 20'000; ++i) text += "k" + std::to_string(i) + " = 4 ft\n";
    const auto reading = read(text);
    EXPECT_GE(reading.diagnostics.size(), 50U);
    EXPECT_FALSE(reading.complete);
}

TEST(Hostile, ManyMistakesOnLongLines) {
    std::string line = "no_splice = [";
    while (line.size() < 3900) line += "\"\",";
    std::string text = "[[wall]]\n[wall.board]\n";
    for (int i = 0; i < 40; ++i) text += "[[wall]]\n[wall.board]\n" + line + "]\n";
    EXPECT_GT(read(text).diagnostics.size(), 20'000U);
}

TEST(Hostile, MessagesCarryNoControlCharacters) {
    const std::string text = "\"\\u001b[31m\" = 1\n";
    const job::Source source{"hostile.toml", text + "a = \x1b[31m 3\n"};
    const std::string shown = job::render(job::read_job(source).diagnostics, source);
    EXPECT_EQ(shown.find('\x1b'), std::string::npos);
    EXPECT_FALSE(shown.empty());
}

}  // namespace
