// Every shape with the figures it takes; legs, casing, form.
#include "job/choices.h"

#include "jobs.h"

using namespace kerfpacket::job;
using namespace kerfpacket::job::tests;

namespace {

double inches(const Sourced<Length>& value) { return value.value.inches(); }

double inches(const std::optional<Sourced<Length>>& value) { return value ? inches(*value) : -1; }

bool takes_no_radius(const Opening& o) {
    return !o.radius && !o.side_radius && !o.crown_radius && !o.reverse_radius && !o.ordinates;
}

TEST(Shapes, HaveOneWordEach) {
    ASSERT_EQ(shape_words().size(), 11U);
    for (const auto& [name, shape] : shape_words()) EXPECT_EQ(word(shape), name);
    ASSERT_EQ(fit_words().size(), 3U);
    for (const auto& [name, fit] : fit_words()) EXPECT_EQ(word(fit), name);
}

TEST(Shapes, BySpanAndRise) {
    for (const std::string name :
         {"segmental", "elliptical", "three-centred", "tudor", "parabolic", "catenary", "eyebrow"}) {
        const Opening o = read_opening("shape = \"" + name + "\"\nspan = \"60 in\"\nrise = \"14 in\"");
        EXPECT_EQ(word(o.shape.value), name);
        EXPECT_DOUBLE_EQ(inches(o.span), 60) << name;
        EXPECT_DOUBLE_EQ(inches(o.rise), 14) << name;
        EXPECT_EQ(o.rise.at, (Position{14, 8})) << name;
        EXPECT_TRUE(takes_no_radius(o)) << name;
        EXPECT_FALSE(o.through_legs || o.legs || o.form);
    }
}

TEST(Shapes, AHorseshoeRisesMoreThanHalfItsSpan) {
    const Opening o = read_opening("shape = \"horseshoe\"\nspan = \"40 in\"\nrise = \"27 in\"");
    EXPECT_EQ(o.shape.value, Shape::horseshoe);
    EXPECT_DOUBLE_EQ(inches(o.rise), 27);
}

TEST(Shapes, WhatAnArchCannotBeIsForTheCurveToSay) {
    // A three-centred arch as high as half its span, a board thicker than any radius: told later, with the geometry.
    EXPECT_EQ(inches(read_opening("shape = \"three-centred\"\nspan = \"20 in\"\nrise = \"30 in\"").rise), 30);
    EXPECT_EQ(inches(read_opening("shape = \"pointed\"\nspan = \"40 in\"\nradius = \"1/2 in\"").radius), 0.5);
}

TEST(Shapes, APointedHeadHasARiseOrARadius) {
    const Opening by_radius = read_opening("shape = \"pointed\"\nspan = \"40 in\"\nradius = \"47 in\"");
    EXPECT_DOUBLE_EQ(inches(by_radius.radius), 47);
    EXPECT_EQ(by_radius.radius->at, (Position{14, 10}));
    EXPECT_EQ(by_radius.rise.at.line, 0);
    const Opening by_rise = read_opening("shape = \"pointed\"\nspan = \"40 in\"\nrise = \"38 in\"");
    EXPECT_DOUBLE_EQ(inches(by_rise.rise), 38);
    EXPECT_FALSE(by_rise.radius);
}

TEST(Shapes, RadiiOfTheArcs) {
    const std::string size = "\nspan = \"60 in\"\nrise = \"14 in\"\n";
    const Opening three = read_opening("shape = \"three-centred\"" + size + "side_radius = \"8 in\"");
    EXPECT_DOUBLE_EQ(inches(three.side_radius), 8);
    EXPECT_FALSE(three.crown_radius || three.radius || three.reverse_radius);
    const Opening tudor = read_opening("shape = \"tudor\"" + size + "side_radius = \"8 in\"\ncrown_radius = 70");
    EXPECT_DOUBLE_EQ(inches(tudor.side_radius), 8);
    EXPECT_DOUBLE_EQ(inches(tudor.crown_radius), 70);
    const Opening eyebrow = read_opening("shape = \"eyebrow\"" + size + "reverse_radius = \"44 in\"");
    EXPECT_DOUBLE_EQ(inches(eyebrow.reverse_radius), 44);
    EXPECT_FALSE(eyebrow.side_radius || eyebrow.radius);
}

TEST(Shapes, AKeyThatAShapeDoesNotTakeLeavesTheOpeningForLaterStages) {
    const Reading reading =
        read_job({"job.toml", opening_text("shape = \"catenary\"\nspan = 40\nrise = 12\nside_radius = \"8 in\"")});
    EXPECT_EQ(reading.diagnostics.size(), 1U);
    ASSERT_EQ(reading.job.openings.size(), 1U);
    EXPECT_FALSE(reading.job.openings[0].side_radius);
    // Two ways of giving the same arch leave open which is meant.
    const Reading two = read_job({"job.toml", opening_text("shape = \"pointed\"\nspan = 40\nrise = 38\nradius = 47")});
    EXPECT_EQ(two.diagnostics.size(), 1U);
    EXPECT_TRUE(two.job.openings.empty());
}

TEST(Legs, OneLengthOrTwo) {
    const std::string arch = "shape = \"elliptical\"\nspan = \"60 in\"\nrise = \"14 in\"\n";
    const auto both = read_opening(arch + "legs = \"72 in\"").legs;
    ASSERT_TRUE(both);
    EXPECT_DOUBLE_EQ(inches(both->at(0)), 72);
    EXPECT_DOUBLE_EQ(inches(both->at(1)), 72);
    const Opening two = read_opening(arch + "legs = [\"70-3/8 in\", 71]\nthrough_legs = true");
    ASSERT_TRUE(two.legs);
    EXPECT_DOUBLE_EQ(inches(two.legs->at(0)), 70.375);
    EXPECT_DOUBLE_EQ(inches(two.legs->at(1)), 71);
    EXPECT_EQ(two.legs->at(1).at, (Position{15, 22}));
    EXPECT_TRUE(two.through_legs);
    EXPECT_FALSE(read_opening(arch + "through_legs = false").through_legs);
    EXPECT_TRUE(read_opening(arch + "legs = [0, 3]\nthrough_legs = true").through_legs);
}

TEST(Legs, WithSpringsThatDifferTheStringIsLongerThanTheSpan) {
    // 40 across and 30 up is a string of 50, half of it 25.
    const std::string arch = "shape = \"segmental\"\nspan = 40\nlegs = [70, 40]\n";
    EXPECT_DOUBLE_EQ(inches(read_opening(arch + "rise = 25").rise), 25);
    EXPECT_EQ(only_mistake(opening_text(arch + "rise = 25.1")),
              "rise 25.100 in is more than half the line that joins the springs, 25 in");
    EXPECT_EQ(only_mistake(opening_text("shape = \"segmental\"\nspan = 40\nrise = 25")),
              "rise 25 in is more than half the span, 20 in");
}

TEST(Extras, CasingAndForm) {
    const std::string arch = "shape = \"segmental\"\nspan = 60\nrise = 14";
    const Opening plain = read_opening(arch, "[opening.casing]\nwidth = 3\n[opening.form]\n");
    ASSERT_TRUE(plain.casing && plain.form);
    EXPECT_FALSE(plain.casing->segments || plain.casing->board);
    EXPECT_FALSE(plain.form->step);
    EXPECT_TRUE(plain.form->stations.empty());
    EXPECT_EQ(plain.form->at, (Position{21, 1}));
    const Opening full = read_opening(
        arch, "[opening.casing]\nwidth = 3\nsegments = 4\nboard = \"7-1/4 in\"\n[opening.form]\nstep = \"5 in\"\n");
    EXPECT_EQ(full.casing->segments.value_or(Sourced<int>{}).value, 4);
    EXPECT_DOUBLE_EQ(inches(full.casing->board), 7.25);
    EXPECT_DOUBLE_EQ(inches(full.form->step), 5);
    const Wall wall = read_wall("radius = 90\nangle = 40", "[wall.form]\nstations = [0, \"6 in\", 20.5]\n");
    ASSERT_TRUE(wall.form);
    ASSERT_EQ(wall.form->stations.size(), 3U);
    EXPECT_DOUBLE_EQ(inches(wall.form->stations[2]), 20.5);
}

TEST(Extras, AStepThatGivesAThousandOrdinatesIsTaken) {
    const std::string arch = "shape = \"segmental\"\nrise = 14\nspan = ";
    EXPECT_DOUBLE_EQ(inches(read_opening(arch + "500", "[opening.form]\nstep = \"1/2 in\"\n").form->step), 0.5);
    EXPECT_EQ(only_mistake(opening_text(arch + "501", "[opening.form]\nstep = \"1/2 in\"\n")),
              "step 1/2 in gives more than 1000 ordinates");
}

}  // namespace
