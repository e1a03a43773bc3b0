#include <filesystem>

#include <gtest/gtest.h>

#include "job/read.h"

using namespace kerfpacket::job;

namespace {

constexpr std::string_view plain = R"([job]
number = "Q-1"
title = "Bay window sill"
revision = "A"
date = 2026-02-03
units = "in"
[saw]
blade_diameter = "10 in"
kerf = "0.125 in"
[[opening]]
id = "A"
shape = "segmental"
span = "4 ft 2-1/2 in"
rise = "9 in"
depth = "5 in"
[opening.liner]
material = "mdf"
thickness = "3/4 in"
)";

constexpr std::string_view same_meaning = R"(# the same job, otherwise written
saw = { kerf = "3.175 mm", blade_diameter = "254 mm" }

[job]
revision = 'A'
units    = "in"
date     = "2026-02-03"
title    = "Bay window sill"
number   = "Q-1"
language = "en"

[printer]
margin = 0.25
media = "na_letter_8.5x11in"

[[opening]]
depth = 5.0
rise  = "0.75 ft"
span  = 50.5
shape = "segmental"
id    = "A"
quantity = 1
measured_to = "wall"
liner = { thickness = 0.75, material = "mdf", kerf_depth = "solve", spacing = "solve", trim = 3, zero = "left",
tick = "centre", strip = "face" }
)";

Job read(std::string text) {
    const Source source{"job.toml", std::move(text)};
    const Reading reading = read_job(source);
    EXPECT_EQ(render(reading.diagnostics, source), "");
    return reading.job;
}

std::string with(std::string_view what, std::string_view other) {
    std::string text(plain);
    return text.replace(text.find(what), what.size(), other);
}

TEST(Normalised, IsTheSameForTheSameMeaning) {
    // An inline table stands on one line in TOML 1.0.
    std::string text(same_meaning);
    text.replace(text.find("\"left\",\n"), 8, "\"left\", ");
    EXPECT_EQ(normalised(read(text)), normalised(read(std::string(plain))));
}

TEST(Normalised, ReadsBackAsTheSameJob) {
    const auto loaded = load(std::filesystem::path(KERFPACKET_SOURCE_DIR) / "tests/unit/job/good.toml");
    ASSERT_TRUE(loaded);
    const std::string once = normalised(read(loaded->text));
    EXPECT_EQ(normalised(read(once)), once);
    EXPECT_NE(once.find("span = \"1625.600000 mm\""), std::string::npos);
}

TEST(Normalised, KeepsQuotesAndBackslashes) {
    const Job job = read(with("\"Bay window sill\"", R"("Bay \"B\" \\ sill")"));
    EXPECT_EQ(job.header.title, R"(Bay "B" \ sill)");
    EXPECT_EQ(read(normalised(job)).header.title, job.header.title);
}

TEST(Normalised, KeepsTheSecondLanguageWhereThereIsOne) {
    EXPECT_EQ(normalised(read(std::string(plain))).find("also_in"), std::string::npos);
    const Job job = read(with("units = ", "also_in = \"es\"\nunits = "));
    EXPECT_EQ(job.header.also_in, "es");
    EXPECT_EQ(read(normalised(job)).header.also_in, "es");
}

TEST(Fingerprint, IsTheBeginningOfTheSha256) {
    const Job job = read(std::string(plain));
    EXPECT_EQ(job.fingerprint, fingerprint(job));
    // Independent value: coreutils sha256sum over the text that `normalised` gives for this job.
    EXPECT_EQ(job.fingerprint, "57635fb7");
}

TEST(Fingerprint, ChangesWithEveryFigure) {
    const std::string before = read(std::string(plain)).fingerprint;
    EXPECT_NE(read(with("9 in", "9-1/64 in")).fingerprint, before);
    EXPECT_NE(read(with("Q-1", "Q-2")).fingerprint, before);
    EXPECT_NE(read(with("0.125 in", "0.126 in")).fingerprint, before);
    EXPECT_NE(read(with("rise", "legs = 0\nrise")).fingerprint, before);
    const std::string second = read(with("units = ", "also_in = \"es\"\nunits = ")).fingerprint;
    EXPECT_NE(second, before);
}

}  // namespace
