// [printer], the strip's face or edge, wishes for the template: read, and their part in the fingerprint.
#include "jobs.h"

using namespace kerfpacket::job;
using namespace kerfpacket::job::tests;

namespace {

const std::string arch = "shape = \"segmental\"\nspan = \"60 in\"\nrise = \"9 in\"";

Job with_printer(const std::string& lines) { return read_well(opening_text(arch, "[printer]\n" + lines + "\n")); }

TEST(ReadPrinter, NothingIsSetThatIsNotSaid) {
    const Printer printer = with_printer("").printer;
    EXPECT_FALSE(printer.strips || printer.templates || printer.adhesive || printer.profile);
    EXPECT_EQ(printer.strip_media().name, "na_letter_8.5x11in");
    EXPECT_DOUBLE_EQ(printer.margin.inches(), 0.25);
}

TEST(ReadPrinter, PapersOfTheirOwn) {
    const Printer printer = with_printer(
                                "media = \"iso_a4_210x297mm\"\nstrip_media = \"custom_roll_62mm\"\ntemplate_media = "
                                "\"custom_roll_24in\"\nadhesive = true\nmargin = 0.5\nprofile = \"shop-2\"")
                                .printer;
    EXPECT_EQ(printer.media.name, "iso_a4_210x297mm");
    EXPECT_TRUE(printer.strip_media().roll);
    EXPECT_EQ(printer.template_media().name, "custom_roll_24in");
    EXPECT_TRUE(printer.adhesive);
    EXPECT_DOUBLE_EQ(printer.margin.inches(), 0.5);
    ASSERT_TRUE(printer.profile);
    EXPECT_EQ(printer.profile->name.value, "shop-2");
    EXPECT_EQ(printer.profile->name.at.line, 25);
}

TEST(ReadPrinter, TheJobsKeysWinOverTheShops) {
    const ShopReading shop = read_shop(
        {"shop.toml", "[printer]\nstrip_media = \"custom_roll_62mm\"\nadhesive = true\nprofile = \"shop-2\"\n"});
    ASSERT_TRUE(shop.diagnostics.empty());
    const Source source{"job.toml", opening_text(arch, "[printer]\nstrip_media = \"iso_a3_297x420mm\"\n")};
    const Printer printer = read_job(source, shop.shop).job.printer;
    EXPECT_EQ(printer.strip_media().name, "iso_a3_297x420mm");
    EXPECT_TRUE(printer.adhesive);
    // The shop's name stands nowhere in the job file.
    ASSERT_TRUE(printer.profile);
    EXPECT_EQ(printer.profile->name.value, "shop-2");
    EXPECT_EQ(printer.profile->name.at.line, 0);
}

TEST(ReadPrinter, WhatIsTheDefaultLeavesTheFingerprint) {
    const std::string before = with_printer("").fingerprint;
    EXPECT_EQ(with_printer("strip_media = \"na_letter_8.5x11in\"\nadhesive = false").fingerprint, before);
    EXPECT_EQ(read_well(opening_text(arch, "strip = \"face\"\n[opening.template]\n")).fingerprint, before);
}

TEST(ReadPrinter, EveryKeyChangesTheFingerprintAndIsReadBack) {
    const std::string before = with_printer("").fingerprint;
    for (const char* line :
         {"strip_media = \"custom_roll_62mm\"", "template_media = \"custom_roll_24in\"", "adhesive = true",
          "margin = \"1/2 in\"", "profile = \"shop-2\"", "media = \"custom_card_9x20in\""}) {
        const Job job = with_printer(line);
        EXPECT_NE(job.fingerprint, before) << line;
        EXPECT_EQ(read_well(normalised(job)).fingerprint, job.fingerprint) << line;
    }
}

TEST(ReadPrinter, OfAProfileOnlyTheNameCounts) {
    Job job = with_printer("profile = \"shop-2\"");
    const std::string before = normalised(job);
    job.printer.profile->measured = Profile{"shop-2", 0.99, 1.01, Feed::long_edge, {}};
    EXPECT_EQ(normalised(job), before);
}

TEST(ReadStrip, FaceOrEdge) {
    EXPECT_EQ(read_opening(arch).liner.strip.value, StripOn::face);
    const Job job = read_well(opening_text(arch, "strip = \"edge\"\n"));
    const auto& strip = job.openings.at(0).liner.strip;
    EXPECT_EQ(strip.value, StripOn::edge);
    EXPECT_EQ(strip.at.line, 19);
    EXPECT_EQ(read_well(normalised(job)).openings.at(0).liner.strip.value, StripOn::edge);
    const Wall wall =
        read_wall("chord = \"80 in\"\nrise = \"9 in\"\ntails = [\"0 in\", \"0 in\"]", "strip = \"edge\"\n");
    EXPECT_EQ(wall.board.strip.value, StripOn::edge);
}

TEST(ReadTemplate, Wishes) {
    const TemplateWish none = read_opening(arch).wish;
    EXPECT_FALSE(none.sheets);
    EXPECT_TRUE(none.half) << "common practice, no source";
    const Job job = read_well(opening_text(arch, "[opening.template]\nsheets = \"along\"\nhalf = true\n"));
    const TemplateWish& wish = job.openings.at(0).wish;
    EXPECT_EQ(wish.sheets, Sheets::along);
    EXPECT_TRUE(wish.half);
    EXPECT_EQ(wish.half_at.line, 21);
    const Job again = read_well(normalised(job));
    EXPECT_EQ(again.openings.at(0).wish.sheets, Sheets::along);
    EXPECT_TRUE(again.openings.at(0).wish.half);
    EXPECT_EQ(again.fingerprint, job.fingerprint);
}

TEST(ReadTemplate, AWholeOneIsAskedFor) {
    const Job job = read_well(opening_text(arch, "[opening.template]\nhalf = false\n"));
    EXPECT_FALSE(job.openings.at(0).wish.half);
    EXPECT_NE(job.fingerprint, read_well(opening_text(arch, "")).fingerprint);
    const Job again = read_well(normalised(job));
    EXPECT_FALSE(again.openings.at(0).wish.half);
    EXPECT_EQ(again.fingerprint, job.fingerprint);
}

}  // namespace
