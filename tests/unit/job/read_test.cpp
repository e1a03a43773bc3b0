#include "job/read.h"

#include <filesystem>

#include <gtest/gtest.h>

using namespace kerfpacket::job;
using namespace kerfpacket::measure::literals;

namespace {

Source good_source() {
    const auto loaded = load(std::filesystem::path(KERFPACKET_SOURCE_DIR) / "tests/unit/job/good.toml");
    if (!loaded) ADD_FAILURE() << loaded.error().message;
    return loaded.value_or(Source{});
}

/// The good job with one change.
Source changed(std::string_view what, std::string_view with) {
    Source source = good_source();
    const std::size_t at = source.text.find(what);
    if (at == std::string::npos) ADD_FAILURE() << what << " is not in the good job";
    else source.text.replace(at, what.size(), with);
    return source;
}

Job read_good(const Source& source) {
    const Reading reading = read_job(source);
    EXPECT_EQ(render(reading.diagnostics, source), "");
    EXPECT_TRUE(reading.complete);
    return reading.job;
}

TEST(ReadJob, Head) {
    const Job job = read_good(good_source());
    EXPECT_EQ(job.header.number, "K-207");
    EXPECT_EQ(job.header.title, "Mill Lane chapel, porch and stair");
    EXPECT_EQ(job.header.revision, "B");
    EXPECT_EQ(job.header.date, "2026-03-09");
    EXPECT_EQ(job.header.units, Unit::inch);
    EXPECT_EQ(job.header.language, "en");
    EXPECT_DOUBLE_EQ(job.saw.kerf.value.inches(), 0.126);
    EXPECT_EQ(job.saw.kerf.at, (Position{12, 8}));
    EXPECT_DOUBLE_EQ(job.saw.blade_diameter.value.inches(), 10);
    ASSERT_TRUE(job.saw.travel && job.saw.rear_limit);
    EXPECT_DOUBLE_EQ(job.saw.travel->value.inches(), 12.625);
    EXPECT_DOUBLE_EQ(job.saw.rear_limit->value.inches(), 1.5);
    EXPECT_EQ(job.printer.media.name, "iso_a4_210x297mm");
    EXPECT_DOUBLE_EQ(job.printer.margin.mm(), 6);
}

TEST(ReadJob, SegmentalOpening) {
    const Job job = read_good(good_source());
    ASSERT_EQ(job.openings.size(), 2U);
    const Opening& p = job.openings[0];
    EXPECT_EQ(p.id.value, "P");
    EXPECT_EQ(p.shape.value, Shape::segmental);
    EXPECT_DOUBLE_EQ(p.span.value.inches(), 64);
    EXPECT_DOUBLE_EQ(p.rise.value.inches(), 9.75);
    EXPECT_EQ(p.measured_to, Surface::finish);
    EXPECT_EQ(p.quantity, 3);
    ASSERT_TRUE(p.legs);
    EXPECT_DOUBLE_EQ(p.legs->at(0).value.inches(), 70);
    EXPECT_DOUBLE_EQ(p.legs->at(1).value.inches(), 70);
    EXPECT_FALSE(p.through_legs);
    EXPECT_EQ(p.liner.material.value, "mdf");
    EXPECT_DOUBLE_EQ(p.liner.width.value.inches(), 6.625);
    EXPECT_TRUE(p.liner.kerf_depth.half);
    EXPECT_FALSE(p.liner.kerf_depth.given);
    ASSERT_TRUE(p.liner.spacing.given);
    EXPECT_DOUBLE_EQ(p.liner.spacing.given->inches(), 0.4375);
    EXPECT_DOUBLE_EQ(p.liner.trim.value.inches(), 2);
    EXPECT_EQ(p.liner.zero, End::right);
    EXPECT_EQ(p.liner.tick, Tick::left);
    ASSERT_TRUE(p.casing);
    ASSERT_TRUE(p.casing->segments);
    EXPECT_EQ(p.casing->segments->value, 5);
    EXPECT_FALSE(p.casing->board);
}

TEST(ReadJob, DefaultsOfAnOpening) {
    const Opening n = read_good(good_source()).openings.at(1);
    EXPECT_EQ(n.shape.value, Shape::semicircular);
    EXPECT_DOUBLE_EQ(n.rise.value.mm(), 480);
    EXPECT_EQ(n.measured_to, Surface::wall);
    EXPECT_EQ(n.quantity, 1);
    EXPECT_FALSE(n.legs || n.casing);
    EXPECT_FALSE(n.liner.kerf_depth.given || n.liner.kerf_depth.half || n.liner.kerf_depth.solve);
    EXPECT_FALSE(n.liner.spacing.given || n.liner.spacing.solve);
    EXPECT_DOUBLE_EQ(n.liner.trim.value.inches(), 3);
    EXPECT_EQ(n.liner.trim.at.line, 0);
    EXPECT_EQ(n.liner.zero, End::left);
    EXPECT_EQ(n.liner.tick, Tick::centre);
}

TEST(ReadJob, Walls) {
    const Job job = read_good(good_source());
    ASSERT_EQ(job.walls.size(), 2U);
    const Wall& s = job.walls[0];
    ASSERT_TRUE(s.chord && s.rise);
    EXPECT_DOUBLE_EQ(s.chord->value.inches(), 118);
    EXPECT_DOUBLE_EQ(s.rise->value.inches(), 14.5);
    EXPECT_FALSE(s.radius || s.angle);
    EXPECT_EQ(s.side.value, Side::convex);
    EXPECT_EQ(s.measured_to, Surface::finish);
    EXPECT_DOUBLE_EQ(s.tails[0].value.inches(), 20);
    EXPECT_DOUBLE_EQ(s.tails[1].value.inches(), 0);
    EXPECT_TRUE(s.board.spacing.solve);
    EXPECT_DOUBLE_EQ(s.board.scarf.value.inches(), 3);
    ASSERT_EQ(s.board.no_splice.size(), 2U);
    EXPECT_DOUBLE_EQ(s.board.no_splice[1].second.value.inches(), 61);
    const Wall& t = job.walls[1];
    ASSERT_TRUE(t.radius && t.angle);
    EXPECT_DOUBLE_EQ(t.radius->value.inches(), 132);
    EXPECT_DOUBLE_EQ(t.angle->value.degrees(), 47.5);
    EXPECT_EQ(t.side.value, Side::concave);
}

TEST(ReadJob, Stock) {
    const Stock stock = read_good(good_source()).stock;
    ASSERT_EQ(stock.lengths.size(), 2U);
    EXPECT_DOUBLE_EQ(stock.lengths[1].value.inches(), 192);
    ASSERT_TRUE(stock.sheet);
    EXPECT_DOUBLE_EQ(stock.sheet->at(1).inches(), 97);
}

TEST(ReadJob, LetterPaperWhenNothingIsSaid) {
    Source source = changed("[printer]\nmedia = \"iso_a4_210x297mm\"\nmargin = \"6 mm\"\n", "");
    const Job job = read_good(source);
    EXPECT_EQ(job.printer.media.name, "na_letter_8.5x11in");
    EXPECT_DOUBLE_EQ(job.printer.margin.inches(), 0.25);
}

TEST(ReadJob, APieceWithAMistakeIsLeftOutAndTheOthersStay) {
    const Reading reading = read_job(changed("chord = \"118 in\"", "chord = \"118 inn\""));
    EXPECT_EQ(reading.diagnostics.size(), 1U);
    EXPECT_TRUE(reading.complete);
    EXPECT_EQ(reading.job.openings.size(), 2U);
    ASSERT_EQ(reading.job.walls.size(), 1U);
    EXPECT_EQ(reading.job.walls[0].id.value, "T");
}

TEST(ReadJob, AnUnreadableLineLeavesItsPieceOutToo) {
    const Reading reading = read_job(changed("chord = \"118 in\"", "chord = 118 in"));
    EXPECT_EQ(reading.diagnostics.size(), 1U);
    EXPECT_TRUE(reading.complete);
    EXPECT_EQ(reading.job.walls.size(), 1U);
}

TEST(ReadJob, AKeyThatNobodyKnowsLeavesItsPieceComplete) {
    const Reading reading = read_job(changed("chord = \"118 in\"", "chord = \"118 in\"\ncord = 1"));
    EXPECT_EQ(reading.diagnostics.size(), 1U);
    EXPECT_EQ(reading.job.walls.size(), 2U);
    // Not so where the slip is in the name of a key that is needed: its value is missing.
    const Reading slip = read_job(changed("thickness = ", "thicknes = "));
    EXPECT_EQ(slip.diagnostics.size(), 1U);
    EXPECT_EQ(slip.job.openings.size() + slip.job.walls.size(), 3U);
}

TEST(ReadJob, AMistakeInTheHeadMakesItIncomplete) {
    EXPECT_FALSE(read_job(changed("kerf = 0.126", "kerf = -1")).complete);
    EXPECT_FALSE(read_job(changed("kerf = 0.126", "kerf = 1/8")).complete);
    EXPECT_FALSE(read_job(changed("units = \"in\"", "units = \"yd\"")).complete);
}

TEST(ReadJob, ARiseWithinASixtyFourthOfAHalfCircleIsOne) {
    const Job job = read_good(changed("span = \"960 mm\"", "span = \"960 mm\"\nrise = \"480.3 mm\""));
    EXPECT_DOUBLE_EQ(job.openings.at(1).rise.value.mm(), 480);
    EXPECT_EQ(read_job(changed("span = \"960 mm\"", "span = \"960 mm\"\nrise = \"480.5 mm\"")).diagnostics.size(), 1U);
}

TEST(ReadJob, LimitsThemselvesAreAccepted) {
    read_good(changed("rise = \"9-3/4 in\"", "rise = \"32 in\""));  // half the span of 64
    read_good(changed("angle = 47.5", "angle = \"180 deg\""));
    read_good(changed("kerf_depth = \"1/2 in\"", "kerf_depth = \"11/16 in\""));  // a web of 1/16
    read_good(changed("margin = \"6 mm\"", "margin = 0"));
    read_good(changed("tails = [\"20 in\", 0]", "tails = [0, 0]"));
}

TEST(ReadJob, WindowsLineEnds) {
    Source source = good_source();
    std::string text;
    for (const char c : source.text) text += c == '\n' ? std::string("\r\n") : std::string(1, c);
    const Job job = read_good({"crlf.toml", text});
    EXPECT_EQ(job.fingerprint, read_good(source).fingerprint);
    EXPECT_EQ(job.saw.kerf.at, (Position{12, 8}));
}

// Invented jobs: a concave stair base with a splice, and a long hall base by radius and angle with tails.
TEST(ReadJob, HarborStair) {
    const Job job = read_good({"harbor.toml", R"([job]
number = "H-3"
title = "Harbor Stair base"
revision = "A"
date = 2026-04-20
units = "in"
[saw]
blade_diameter = 12
kerf = 0.118
[[wall]]
id = "H"
chord = 214
rise = "31-1/4 in"
side = "concave"
[wall.board]
material = "mdf"
thickness = "3/4 in"
width = "7-1/4 in"
trim = 4
scarf = 3
no_splice = [[88, 92]]
[stock]
lengths = ["16 ft"]
)"});
    ASSERT_EQ(job.walls.size(), 1U);
    EXPECT_DOUBLE_EQ(job.walls[0].rise->value.inches(), 31.25);
    EXPECT_DOUBLE_EQ(job.walls[0].board.no_splice.at(0).first.value.inches(), 88);
}

TEST(ReadJob, FernStreet) {
    const Job job = read_good({"fern.toml", R"([job]
number = "F-5"
title = "Fern Street hall"
revision = "A"
date = 2026-04-21
units = "in"
[saw]
blade_diameter = "10 in"
kerf = 0.1
[[wall]]
id = "F"
radius = "20 ft"
angle = 30
side = "concave"
tails = ["4 ft", "6 ft"]
[wall.board]
material = "mdf"
thickness = "3/4 in"
width = "5-1/4 in"
spacing = "1/2 in"
)"});
    ASSERT_EQ(job.walls.size(), 1U);
    EXPECT_DOUBLE_EQ(job.walls[0].radius->value.inches(), 240);
    EXPECT_DOUBLE_EQ(job.walls[0].tails[1].value.inches(), 72);
}

}  // namespace
