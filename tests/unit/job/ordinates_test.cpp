// Measured points: reading, what is told of them, and how they read back.
#include <algorithm>

#include "job/shop.h"
#include "jobs.h"

using namespace kerfpacket::job;
using namespace kerfpacket::job::tests;

namespace {

std::string list_of(int points) {
    std::string rows = "ordinates = [\n";
    for (int i = 0; i < points; ++i)
        rows += "    [" + std::to_string(i) + ", " + std::to_string(std::min(i, points - 1 - i)) + "],\n";
    return rows + "]";
}

std::string with_points(const std::string& keys) { return opening_text("shape = \"ordinates\"\n" + keys); }

TEST(Ordinates, OfAnOpening) {
    const Opening o = tests::read_opening(
        "shape = \"ordinates\"\nordinates = [[\"-2 in\", 0],\n  [\"1 ft\", \"7-1/4 in\"], [24, \"-1 in\"]]\n"
        "fit = \"arc\"\nend_angles = [\"40 deg\", -35.5]");
    EXPECT_EQ(o.shape.value, Shape::ordinates);
    ASSERT_TRUE(o.ordinates);
    EXPECT_EQ(o.ordinates->at, (Position{13, 13}));
    const auto& points = o.ordinates->points;
    ASSERT_EQ(points.size(), 3U);
    EXPECT_DOUBLE_EQ(points[1].station.value.inches(), 12);
    EXPECT_DOUBLE_EQ(points[1].height.value.inches(), 7.25);
    EXPECT_EQ(points[1].height.at, (Position{14, 12}));
    EXPECT_DOUBLE_EQ(points[2].height.value.inches(), -1);
    EXPECT_DOUBLE_EQ(o.span.value.inches(), 26) << "from the first station to the last";
    EXPECT_EQ(o.span.at, o.ordinates->at);
    EXPECT_EQ(o.rise.at.line, 0);
    EXPECT_EQ(o.ordinates->fit.value_or(Sourced<Fit>{}).value, Fit::arc);
    ASSERT_TRUE(o.ordinates->end_angles);
    EXPECT_DOUBLE_EQ(o.ordinates->end_angles->at(0).value.degrees(), 40);
    EXPECT_DOUBLE_EQ(o.ordinates->end_angles->at(1).value.degrees(), -35.5);
}

TEST(Ordinates, WithoutAChoiceTheyHaveNone) {
    const Opening o = tests::read_opening("shape = \"ordinates\"\n" + list_of(3));
    ASSERT_TRUE(o.ordinates);
    EXPECT_FALSE(o.ordinates->fit || o.ordinates->end_angles);
}

TEST(Ordinates, OfAWall) {
    const Wall w = tests::read_wall("ordinates = [[0, 0], [30, 6.5], [72, 0.25]]\nfit = \"fair\"");
    ASSERT_TRUE(w.ordinates);
    EXPECT_EQ(w.ordinates->points.size(), 3U);
    EXPECT_EQ(w.ordinates->fit.value_or(Sourced<Fit>{}).value, Fit::fair);
    EXPECT_FALSE(w.chord || w.rise || w.radius || w.angle);
}

TEST(Ordinates, FiveThousandAtMost) {
    const Opening o = tests::read_opening("shape = \"ordinates\"\n" + list_of(5000));
    ASSERT_TRUE(o.ordinates);
    EXPECT_EQ(o.ordinates->points.size(), 5000U);
    EXPECT_EQ(only_mistake(with_points(list_of(5001))), "ordinates has 5001 pairs");
}

TEST(Ordinates, FiveAtLeastForAnEllipse) {
    EXPECT_TRUE(tests::read_opening("shape = \"ordinates\"\nfit = \"ellipse\"\n" + list_of(5)).ordinates);
    EXPECT_EQ(only_mistake(with_points("fit = \"ellipse\"\n" + list_of(4))), "ordinates has only 4 points");
}

TEST(Ordinates, StationsAreNamedAsTheyWereWritten) {
    const auto message = [](const std::string& second) {
        return only_mistake(with_points("ordinates = [[0, 0], [24, 6], [" + second + ", 7], [48, 0]]"));
    };
    EXPECT_EQ(message("24.0"), "station 24.0 is given twice");
    EXPECT_EQ(message("\"2 ft\""), "station \"2 ft\" is given twice");
    EXPECT_EQ(message("'609.6 mm'"), "station \"609.6 mm\" is given twice");
    EXPECT_EQ(message("18"), "station 18 comes after 24");
    EXPECT_EQ(message("\"23 63/64 in\""), "station \"23 63/64 in\" comes after 24");
    // Where the words do not stand in one line, the length itself has to do.
    EXPECT_EQ(message("\"\"\"2 ft\"\"\""), "station 24 in is given twice");
}

TEST(Ordinates, AStationThatCannotBeReadIsPassedOver) {
    // The unreadable station is told once; the others are still judged among themselves.
    const auto found =
        read_job({"job.toml", with_points("ordinates = [[0, 0], [\"x\", 6], [20, 7], [10, 3], [48, 0]]")}).diagnostics;
    ASSERT_EQ(found.size(), 2U);
    EXPECT_EQ(found[1].message, "station 10 comes after 20");
}

TEST(Ordinates, AHairOffTheStraightLineIsACurve) {
    EXPECT_TRUE(
        tests::read_opening("shape = \"ordinates\"\nordinates = [[0, 0], [20, \"1/64 in\"], [40, 0]]").ordinates);
    EXPECT_EQ(only_mistake(with_points("ordinates = [[0, 1], [7, 1.7], [40, 5]]")),
              "the ordinates lie in one straight line, which is no curve");
}

// The job's own tape before the shop's, and neither before what is usual; only then it is part of what a job is.
TEST(Ordinates, tape_of_the_job_of_the_shop_or_the_usual) {
    const std::string points = "shape = \"ordinates\"\nordinates = [[0, 0], [10, 4], [30, 0]]";
    const std::string text = opening_text(points);
    std::string own = text;
    own.insert(own.find("units"), "tape = \"1/32 in\"\n");
    Shop shop;
    const auto tape = [&](const std::string& job) {
        return read_job({"job.toml", job}, shop).job.openings.at(0).ordinates->tape.inches();
    };
    EXPECT_DOUBLE_EQ(tape(text), 1.0 / 16);
    EXPECT_DOUBLE_EQ(tape(own), 1.0 / 32);
    shop = read_shop({"shop.toml", "tape = \"1 mm\"\n"}).shop;
    EXPECT_NEAR(tape(text), 1 / 25.4, 1e-12);
    EXPECT_DOUBLE_EQ(tape(own), 1.0 / 32);
    EXPECT_EQ(normalised(read_well(text)).find("tape"), std::string::npos);
    const std::string once = normalised(read_well(own));
    EXPECT_NE(once.find("\ntape = \"0.793750 mm\"\n"), std::string::npos);
    EXPECT_EQ(normalised(read_well(once)), once);
}

}  // namespace
