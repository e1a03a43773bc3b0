// Joints with which less is bought than with the straightest: what is told of them holds when it is done.

#include <gtest/gtest.h>

#include "job/read.h"
#include "plan/plan.h"

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;

std::string wall(const std::string& id, const std::string& radius, int angle, const std::string& tails,
                 const std::string& board = "") {
    return "[[wall]]\nid = \"" + id + "\"\nradius = \"" + radius + "\"\nangle = " + std::to_string(angle) +
           "\nside = \"concave\"\ntails = [" + tails +
           "]\n[wall.board]\nmaterial = \"mdf\"\nthickness = \"3/4 in\"\nwidth = \"7 1/4 in\"\n"
           "spacing = \"1/2 in\"\n" +
           board;
}

std::string head(const std::string& units = "in") {
    return "[job]\nnumber = \"7\"\ntitle = \"t\"\nrevision = \"A\"\ndate = 2026-11-28\nunits = \"" + units +
           "\"\n[saw]\nblade_diameter = \"10 in\"\nkerf = \"0.125 in\"\n";
}

std::string row(int feet, const std::string& more = "") {
    return "[[stock.boards]]\nmaterial = \"mdf\"\nthickness = \"3/4 in\"\nwidth = \"7 1/4 in\"\nlength = \"" +
           std::to_string(feet) + " ft\"\n" + more;
}

Plan planned(const std::string& text) {
    const job::Reading reading = job::read_job({"job.toml", text});
    EXPECT_TRUE(reading.complete) << job::render(reading.diagnostics, {"job.toml", text});
    return make_plan(reading.job).value();
}

std::string key(const std::vector<Length>& joints, measure::Unit unit) {
    std::string text;
    for (const Length at : joints) text += (text.empty() ? "\"" : ", \"") + measure::length_text(at, unit) + "\"";
    return "joints = [" + text + "]\n";
}

// 50 in straight, 193 in of bend: the straightest joint leaves some 47 and 200 in, of boards of 8 and 20 ft; in the
// bend two of 12 ft do.
TEST(CheaperJoints, InTheBendTwoShorterBoardsDo) {
    const std::string stock = row(8) + row(12) + row(16) + row(20);
    const std::string tails = "\"50 in\", \"0 in\"";
    const Plan plan = planned(head() + wall("S", "40 ft", 23, tails) + stock);
    const StockSection& section = plan.stock_plan->sections.at(0);
    EXPECT_FALSE(plan.pieces.at(0).joints.at(0).in_bend);
    EXPECT_NEAR(section.bought.inches(), 336, 1e-6);
    ASSERT_EQ(section.cheaper.size(), 1U);
    const CheaperJoints& cheaper = section.cheaper.front();
    EXPECT_EQ(cheaper.id, "S");
    EXPECT_TRUE(cheaper.in_bend);
    EXPECT_NEAR(cheaper.length.inches(), 48, 1e-6);
    EXPECT_EQ(cheaper.instead, std::vector<Length>{plan.pieces.at(0).joints.at(0).at});
    const Plan then = planned(head() + wall("S", "40 ft", 23, tails, key(cheaper.joints, measure::Unit::inch)) + stock);
    EXPECT_NEAR(then.stock_plan->sections.at(0).bought.inches(), 288, 1e-6);
    EXPECT_LE(then.pieces.at(0).bend.verdict, plan.pieces.at(0).bend.verdict);
    EXPECT_TRUE(then.stock_plan->sections.at(0).cheaper.empty());
}

TEST(CheaperJoints, NotWhereTheJobFixesThemOrSaysNothingOfItsStock) {
    const std::string stock = row(8) + row(12) + row(16) + row(20);
    const std::string tails = "\"50 in\", \"0 in\"";
    const Plan fixed = planned(head() + wall("S", "40 ft", 23, tails, "joints = [\"40 in\"]\n") + stock);
    EXPECT_TRUE(fixed.stock_plan->sections.at(0).cheaper.empty());
    const Plan usual = planned(head() + wall("S", "40 ft", 23, tails, "max_blank = \"17 ft\"\n"));
    EXPECT_TRUE(usual.stock_plan->sections.at(0).cheaper.empty());
    const Plan kept_out =
        planned(head() + wall("S", "40 ft", 23, tails, "no_splice = [[\"60 in\", \"220 in\"]]\n") + stock);
    for (const CheaperJoints& cheaper : kept_out.stock_plan->sections.at(0).cheaper)
        for (const Length at : cheaper.joints) EXPECT_TRUE(at < 60_in || at > 220_in) << at.inches();
}

// Each is written into the job as it is told, and the job planned again, in feet and in money.
TEST(CheaperJoints, WhatIsToldComesTrue) {
    int told = 0;
    for (int i = 0; i < 40; ++i) {
        const bool priced = i % 2 == 1;
        const std::string tails =
            "\"" + std::to_string(20 + 7 * i % 60) + " in\", \"" + std::to_string(5 * i % 31) + " in\"";
        const std::string radius = std::to_string(24 + i % 5 * 6) + " ft";
        const int angle = 20 + i % 7 * 4;
        const std::string others = wall("A", "20 ft", 6 + i % 6, "\"30 in\", \"10 in\"") +
                                   wall("B", "22 ft", 8 + i % 9, "\"0 in\", \"12 in\"");
        const auto price = [&](const char* each) { return priced ? "price = " + std::string(each) + "\n" : ""; };
        const std::string stock = row(8, price("11.20")) + row(10, price("14.90")) + row(12, price("17.10")) +
                                  row(16, price("24.80")) + row(20, price("33.00"));
        const Plan plan = planned(head() + wall("S", radius, angle, tails) + others + stock);
        const StockSection& section = plan.stock_plan->sections.at(0);
        for (const CheaperJoints& cheaper : section.cheaper) {
            ASSERT_EQ(cheaper.id, "S");
            ++told;
            const Plan then = planned(
                head() + wall("S", radius, angle, tails, key(cheaper.joints, measure::Unit::inch)) + others + stock);
            const StockSection& other = then.stock_plan->sections.at(0);
            EXPECT_EQ(section.cents - other.cents, cheaper.cents) << i;
            EXPECT_NEAR((section.bought - other.bought).inches(), cheaper.length.inches(), 1e-6) << i;
            EXPECT_TRUE(priced ? cheaper.cents > 0 : cheaper.length > Length()) << i;
            bool in_bend = false;
            for (const Joint& joint : then.pieces.at(0).joints) in_bend = in_bend || joint.in_bend;
            EXPECT_EQ(in_bend, cheaper.in_bend) << i;
        }
    }
    std::cout << told << " of 40 houses\n";
    EXPECT_GT(told, 5);
}

}  // namespace
}  // namespace kerfpacket::plan
