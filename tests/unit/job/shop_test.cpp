// A shop file, and how a job takes what it leaves out from there.
#include "jobs.h"

using namespace kerfpacket::job;
using namespace kerfpacket::job::tests;

namespace {

constexpr std::string_view shop_text = R"(units = "mm"
[saw]
blade_diameter = "12 in"
kerf = 3
travel = 350
trial_depth = "3/8 in"
trial_at_fence = "1/8 in"
[printer]
media = "iso_a4_210x297mm"
margin = 5
[stock]
lengths = [3050, 4880]
sheet = [1250, 2470]
[[material]]
name = "mdf"
break_strain = "0.9 %"
[[material]]
name = "bay-ply"
break_strain = "0.5 %"
grain = true
)";

Shop shop_of(std::string text) {
    const Source source{"shop.toml", std::move(text)};
    const ShopReading reading = read_shop(source);
    EXPECT_EQ(render(reading.diagnostics, source), "");
    EXPECT_FALSE(reading.shop.faulty);
    return reading.shop;
}

/// A job without [saw]; `tables` stand before the opening.
std::string bare_job(const std::string& tables = "") {
    return "[job]\nnumber = \"K-72\"\ntitle = \"Ferry Steps\"\nrevision = \"A\"\ndate = 2026-06-11\nunits = \"in\"\n" +
           tables +
           "[[opening]]\nid = \"A\"\nshape = \"segmental\"\nspan = 60\nrise = 9\ndepth = 5\n[opening.liner]\n"
           "material = \"mdf\"\nthickness = 0.75\n";
}

Job read_with(const Shop& shop, const std::string& text) {
    const Source source{"job.toml", text};
    const Reading reading = read_job(source, shop);
    EXPECT_EQ(render(reading.diagnostics, source), "");
    EXPECT_TRUE(reading.complete);
    return reading.job;
}

std::vector<std::string> told_with(const Shop& shop, const std::string& text) {
    const Reading reading = read_job({"job.toml", text}, shop);
    std::vector<std::string> messages;
    for (const Diagnostic& d : reading.diagnostics) {
        EXPECT_GE(d.at.line, 1) << d.message;
        messages.push_back(d.message);
    }
    return messages;
}

TEST(Shop, HoldsWhatTheFileSaysWithoutPlaces) {
    const Shop shop = shop_of(std::string(shop_text));
    EXPECT_DOUBLE_EQ(shop.saw.blade_diameter.value.inches(), 12);
    EXPECT_DOUBLE_EQ(shop.saw.kerf.value.mm(), 3);
    ASSERT_TRUE(shop.saw.travel && shop.saw.trial && shop.printer && shop.stock.sheet);
    EXPECT_DOUBLE_EQ(shop.saw.travel->value.mm(), 350);
    EXPECT_DOUBLE_EQ(shop.saw.trial->at_fence.value.inches(), 0.125);
    EXPECT_EQ(shop.printer->media.name, "iso_a4_210x297mm");
    EXPECT_DOUBLE_EQ(shop.printer->margin.mm(), 5);
    ASSERT_EQ(shop.stock.lengths.size(), 2U);
    EXPECT_DOUBLE_EQ(shop.stock.sheet->at(1).mm(), 2470);
    ASSERT_EQ(shop.materials.size(), 2U);
    for (const Position at : {shop.saw.blade_diameter.at, shop.saw.kerf.at, shop.saw.travel->at,
                              shop.saw.trial->depth.at, shop.saw.trial->at_fence.at, shop.stock.lengths[0].at,
                              shop.stock.lengths[1].at, shop.materials[0].name.at, shop.materials[1].name.at})
        EXPECT_EQ(at, Position{});
}

TEST(Shop, NeedsUnitsOnlyForBareNumbers) {
    const Shop shop = shop_of(
        "[saw]\nkerf = \"0.126 in\"\n[[material]]\nname = \"a\"\nbreak_strain = \"1 %\"\n"
        "softness = 2\n");
    EXPECT_DOUBLE_EQ(shop.saw.kerf.value.inches(), 0.126);
    EXPECT_FALSE(shop.printer);
    EXPECT_TRUE(shop_of("# nothing yet\n").materials.empty());
    EXPECT_TRUE(read_shop({"shop.toml", "[saw]\nkerf = 0.126\n"}).shop.faulty);
}

TEST(Shop, AKeyThatNobodyKnowsLeavesItWhole) {
    const ShopReading reading = read_shop({"shop.toml", std::string(shop_text) + "colour = 1\n"});
    EXPECT_EQ(reading.diagnostics.size(), 1U);
    EXPECT_FALSE(reading.shop.faulty);
}

TEST(Shop, GivesAJobAllThatItLeavesOut) {
    const Job job = read_with(shop_of(std::string(shop_text)), bare_job());
    EXPECT_DOUBLE_EQ(job.saw.blade_diameter.value.inches(), 12);
    EXPECT_DOUBLE_EQ(job.saw.kerf.value.mm(), 3);
    EXPECT_TRUE(job.saw.travel && job.saw.trial);
    EXPECT_EQ(job.printer.media.name, "iso_a4_210x297mm");
    EXPECT_EQ(job.stock.lengths.size(), 2U);
    EXPECT_TRUE(job.stock.sheet);
    ASSERT_EQ(job.materials.size(), 2U);
    // The fingerprint covers what the shop gave: written out, it is the same job.
    EXPECT_EQ(read_well(normalised(job)).fingerprint, job.fingerprint);
}

TEST(Shop, TheJobsOwnKeysWin) {
    const Job job = read_with(
        shop_of(std::string(shop_text)),
        bare_job("[saw]\nkerf = 0.1\nrear_limit = \"1 in\"\n[printer]\nmargin = \"3 mm\"\n[stock]\nlengths = [96]\n"
                 "[[material]]\nname = \"mdf\"\nbreak_strain = \"0.8 %\"\n"));
    EXPECT_DOUBLE_EQ(job.saw.kerf.value.inches(), 0.1);
    EXPECT_DOUBLE_EQ(job.saw.blade_diameter.value.inches(), 12);
    EXPECT_DOUBLE_EQ(job.saw.travel.value_or(Sourced<Length>{}).value.mm(), 350);
    EXPECT_TRUE(job.saw.rear_limit);
    EXPECT_FALSE(job.saw.trial) << "the rear limit is never given in two ways";
    EXPECT_EQ(job.printer.media.name, "iso_a4_210x297mm");
    EXPECT_DOUBLE_EQ(job.printer.margin.mm(), 3);
    ASSERT_EQ(job.stock.lengths.size(), 1U);
    EXPECT_DOUBLE_EQ(job.stock.lengths[0].value.inches(), 96);
    EXPECT_TRUE(job.stock.sheet);
    ASSERT_EQ(job.materials.size(), 2U);
    EXPECT_EQ(job.materials[0].name.value, "mdf");
    EXPECT_DOUBLE_EQ(job.materials[0].break_strain_inside, 0.008);
    EXPECT_GT(job.materials[0].name.at.line, 0);
    EXPECT_EQ(job.materials[1].name.value, "bay-ply");
}

TEST(Shop, ATrialGrooveOfTheJobTakesThePlaceOfTheShopsRearLimit) {
    const Shop shop = shop_of("[saw]\nblade_diameter = \"10 in\"\nkerf = \"0.126 in\"\nrear_limit = \"1 in\"\n");
    EXPECT_TRUE(read_with(shop, bare_job()).saw.rear_limit);
    const Saw saw = read_with(shop, bare_job("[saw]\ntrial_depth = \"3/8 in\"\ntrial_ends = 0\n")).saw;
    EXPECT_TRUE(saw.trial);
    EXPECT_FALSE(saw.rear_limit);
    EXPECT_EQ(told_with(shop, bare_job("[saw]\ntrial_depth = 5\ntrial_at_fence = 1\n")),
              (std::vector<std::string>{"trial_depth 5 in is too much for the blade"}));
}

TEST(Shop, AnotherBladeBringsItsOwnKerf) {
    const Shop shop = shop_of(std::string(shop_text));
    EXPECT_EQ(told_with(shop, bare_job("[saw]\nblade_diameter = 10\n")),
              (std::vector<std::string>{"kerf is missing from [saw]"}));
    const Saw saw = read_with(shop, bare_job("[saw]\nblade_diameter = 10\nkerf = 0.126\n")).saw;
    EXPECT_FALSE(saw.trial) << "the groove was cut with the shop's blade";
    EXPECT_TRUE(saw.travel);
    EXPECT_TRUE(read_with(shop, bare_job("[saw]\nblade_diameter = 12\n")).saw.trial);
}

TEST(Shop, WhatNeitherGivesIsToldOfTheJob) {
    EXPECT_EQ(told_with(shop_of("[saw]\nblade_diameter = \"10 in\"\n"), bare_job()),
              (std::vector<std::string>{"kerf is given neither here nor in the shop file"}));
    EXPECT_EQ(told_with(shop_of("[saw]\nblade_diameter = \"10 in\"\n"), bare_job("[saw]\ntravel = 12\n")),
              (std::vector<std::string>{"kerf is missing from [saw]"}));
    EXPECT_EQ(told_with(shop_of("[stock]\nlengths = [\"8 ft\"]\n"), bare_job()),
              (std::vector<std::string>{"the table [saw] is missing"}));
}

TEST(Shop, AFaultyOneIsNotHeldAgainstTheJob) {
    const Shop shop = read_shop({"shop.toml", "[saw]\nkerf = \"0.126 inn\"\nblade_diameter = \"10 in\"\n"}).shop;
    ASSERT_TRUE(shop.faulty);
    const Reading reading = read_job({"job.toml", bare_job()}, shop);
    EXPECT_TRUE(reading.diagnostics.empty());
    EXPECT_FALSE(reading.complete);
}

TEST(Shop, ItsSawIsJudgedWithTheJobsBoards) {
    const Shop shop = shop_of("[saw]\nblade_diameter = \"2 in\"\nkerf = \"3/8 in\"\n");
    std::string text = bare_job();
    text += "kerf_depth = 1\nspacing = \"3/8 in\"\n";
    text.replace(text.find("thickness = 0.75"), 16, "thickness = 1.25");
    EXPECT_EQ(told_with(shop, text), (std::vector<std::string>{"a cut 1 in deep is too much for the blade",
                                                               "spacing 3/8 in is no wider than the kerf, 3/8 in"}));
}

TEST(Shop, WithoutEffectOnAJobThatGivesEverything) {
    const std::string whole = bare_job(
        "[saw]\nblade_diameter = 10\nkerf = 0.126\ntravel = 12\nrear_limit = 1\n[printer]\nmargin = 0\n"
        "media = \"na_letter_8.5x11in\"\n[stock]\nlengths = [96]\nsheet = [49, 97]\n"
        "[[material]]\nname = \"mdf\"\nbreak_strain = \"1 %\"\n");
    EXPECT_EQ(read_with(shop_of(std::string(shop_text)), whole).fingerprint, read_well(whole).fingerprint);
}

}  // namespace
