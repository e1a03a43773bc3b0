// [[material]]: reading, defaults, and which of them count for the fingerprint.
#include "jobs.h"

using namespace kerfpacket::job;
using namespace kerfpacket::job::tests;

namespace {

const std::string segment = "shape = \"segmental\"\nspan = \"60 in\"\nrise = \"9 in\"";

/// A job of mdf with the user's materials.
std::string with(const std::string& materials) { return opening_text(segment, materials); }

Material only_material(const std::string& keys) {
    const Job job = read_well(with("[[material]]\nname = \"bay-ply-9\"\nbreak_strain = \"0.62 %\"\n" + keys));
    EXPECT_EQ(job.materials.size(), 1U);
    return job.materials.empty() ? Material{} : job.materials.front();
}

TEST(Material, WhatIsLeftOut) {
    const Material m = only_material("");
    EXPECT_EQ(m.name.value, "bay-ply-9");
    EXPECT_EQ(m.name.at, (Position{20, 8}));
    EXPECT_DOUBLE_EQ(m.break_strain_inside, 0.0062);
    EXPECT_DOUBLE_EQ(m.break_strain_outside, 0.0062);
    EXPECT_DOUBLE_EQ(m.softness, 1);
    EXPECT_FALSE(m.peel);
    EXPECT_FALSE(m.grain);
}

TEST(Material, GrainMaySplitAsKerfsOpen) {
    // Judgement, no source: the factor 0.7 of the design notes.
    EXPECT_DOUBLE_EQ(only_material("grain = true\n").break_strain_outside, 0.0062 * 0.7);
    EXPECT_DOUBLE_EQ(only_material("grain = true\nbreak_strain_outside = \"0.5%\"\n").break_strain_outside, 0.005);
    EXPECT_DOUBLE_EQ(only_material("grain = false\n").break_strain_outside, 0.0062);
}

TEST(Material, EverythingGiven) {
    const Material m = only_material(
        "break_strain_outside = \" 0.45  % \"\nsoftness = 2\npeel_energy = 300\nmodulus = 9500.5\ngrain = true\n");
    EXPECT_DOUBLE_EQ(m.break_strain_outside, 0.0045);
    EXPECT_DOUBLE_EQ(m.softness, 2);
    ASSERT_TRUE(m.peel);
    EXPECT_DOUBLE_EQ(m.peel->at(0), 300);
    EXPECT_DOUBLE_EQ(m.peel->at(1), 9500.5);
    EXPECT_TRUE(m.grain);
}

TEST(Material, LimitsThemselvesAreAccepted) {
    only_material("break_strain_outside = \"0.05 %\"\nsoftness = 0.5\npeel_energy = 1\nmodulus = 100\n");
    only_material("break_strain_outside = \"5 %\"\nsoftness = 4\npeel_energy = 2000\nmodulus = 40000\n");
}

TEST(Material, AMistakeInOneLeavesNothingToJudge) {
    const Reading reading = read_job({"job.toml", with("[[material]]\nname = \"bay-ply\"\nbreak_strain = 1\n")});
    EXPECT_EQ(reading.diagnostics.size(), 1U);
    EXPECT_FALSE(reading.complete) << "a board of that material would be told to be of an unknown one";
    EXPECT_TRUE(reading.job.materials.empty());
}

TEST(Material, OnlyThoseThatABoardNamesCount) {
    const std::string unused = "[[material]]\nname = \"bay-ply\"\nbreak_strain = \"0.5 %\"\n";
    const std::string own_mdf = "[[material]]\nname = \"mdf\"\nbreak_strain = \"0.9 %\"\n";
    const std::string before = read_well(with("")).fingerprint;
    EXPECT_EQ(read_well(with(unused)).fingerprint, before);
    const std::string used = read_well(with(own_mdf)).fingerprint;
    EXPECT_NE(used, before);
    EXPECT_EQ(read_well(with(unused + own_mdf)).fingerprint, used);
    EXPECT_EQ(read_well(with(own_mdf + unused)).fingerprint, used);
}

TEST(Material, DefaultsWrittenOutMeanTheSame) {
    const std::string own = "[[material]]\nname = \"mdf\"\nbreak_strain = \"0.9 %\"\n";
    const std::string before = read_well(with(own)).fingerprint;
    EXPECT_EQ(read_well(with(own + "break_strain_outside = \"0.9 %\"\nsoftness = 1\ngrain = false\n")).fingerprint,
              before);
    for (const char* key :
         {"break_strain_outside = \"0.8 %\"", "softness = 1.1", "peel_energy = 45\nmodulus = 2700", "grain = true"})
        EXPECT_NE(read_well(with(own + key + "\n")).fingerprint, before) << key;
    const std::string grain = own + "grain = true\n";
    EXPECT_EQ(read_well(with(grain + "break_strain_outside = \"0.63 %\"\n")).fingerprint,
              read_well(with(grain)).fingerprint);
}

TEST(Material, ReadsBackInTheOrderOfNames) {
    const Job job = read_well(
        with("[[wall]]\nid = \"B\"\nside = \"convex\"\nchord = 120\nrise = 14\n[wall.board]\nmaterial = \"ash\"\n"
             "thickness = 0.75\nwidth = 5\n"
             "[[material]]\nname = \"mdf\"\nbreak_strain = \"0.9123 %\"\npeel_energy = 45.5\nmodulus = 2700\n"
             "[[material]]\nname = \"ash\"\nbreak_strain = \"0.8 %\"\nsoftness = 1.7\ngrain = true\n"));
    EXPECT_EQ(job.materials.at(0).name.value, "mdf") << "in file order";
    const std::string once = normalised(job);
    EXPECT_LT(once.find("name = \"ash\""), once.find("name = \"mdf\""));
    const Job again = read_well(once);
    EXPECT_EQ(normalised(again), once);
    EXPECT_EQ(again.fingerprint, job.fingerprint);
    EXPECT_NEAR(again.materials.at(1).break_strain_inside, 0.009123, 1e-12);
    EXPECT_NEAR(again.materials.at(0).break_strain_outside, 0.0056, 1e-12);
}

}  // namespace
