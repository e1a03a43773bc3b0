// What is bought for whole jobs, against what a carpenter works out by hand.

#include <gtest/gtest.h>

#include <algorithm>
#include <map>

#include "job/read.h"
#include "plan/make_stock_plan.h"

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;

/// A wall board of a given length: straight but for a slight bend, so that its blank is chord and tails.
std::string board(const std::string& id, const std::string& tails, int quantity = 1) {
    return "[[wall]]\nid = \"" + id + "\"\nradius = \"10 ft\"\nangle = 20\nside = \"concave\"\ntails = [\"" + tails +
           "\", \"8 in\"]\nquantity = " + std::to_string(quantity) +
           "\n[wall.board]\nmaterial = \"mdf\"\nthickness = \"3/4 in\"\nwidth = \"7 1/4 in\"\n";
}

/// Of an arch: no joint is planned in it.
std::string liner(const std::string& id, const std::string& span) {
    return "[[opening]]\nid = \"" + id + "\"\nshape = \"segmental\"\nspan = \"" + span +
           "\"\nrise = \"1 ft\"\nlegs = \"80 in\"\ndepth = \"7 1/4 in\"\n[opening.liner]\nmaterial = \"mdf\"\n"
           "thickness = \"3/4 in\"\n";
}

std::string job_text(const std::string& pieces, const std::string& stock) {
    return "[job]\nnumber = \"7\"\ntitle = \"t\"\nrevision = \"A\"\ndate = 2026-11-28\nunits = \"in\"\n"
           "[saw]\nblade_diameter = 10\nkerf = 0.126\n" +
           pieces + stock;
}

Plan planned(const std::string& pieces, const std::string& stock = "") {
    const job::Reading reading = job::read_job({"job.toml", job_text(pieces, stock)});
    EXPECT_TRUE(reading.complete) << job::render(reading.diagnostics, {"job.toml", job_text(pieces, stock)});
    return make_plan(reading.job).value();
}

std::string row(const std::string& length, const std::string& more = "", const std::string& width = "7 1/4 in") {
    return "[[stock.boards]]\nmaterial = \"mdf\"\nthickness = \"3/4 in\"\nwidth = \"" + width + "\"\nlength = \"" +
           length + "\"\n" + more;
}

TEST(StockPlan, OneBoardWithoutStockHasNone) {
    EXPECT_FALSE(planned(board("B", "8 in")).stock_plan.has_value());
    EXPECT_TRUE(planned(board("B", "8 in", 2)).stock_plan.has_value());
    EXPECT_TRUE(planned(board("B", "8 in"), row("8 ft")).stock_plan.has_value());
    EXPECT_FALSE(planned(board("B", "8 in"), "[stock]\nlengths = [\"8 ft\"]\n").stock_plan.has_value());
}

TEST(StockPlan, BlanksAreCutAsTheWorkOrderTellsThem) {
    const Plan plan = planned(board("B", "8 in", 3));
    const StockSection& section = plan.stock_plan->sections.at(0);
    EXPECT_TRUE(section.usual_lengths);
    EXPECT_TRUE(section.proved);
    int copies = 0;
    for (const CutStick& stick : section.sticks) {
        Length at = stick.length - plan.stock_plan->end_trim - stick.offcut;
        for (const StockBlank& blank : stick.blanks) {
            EXPECT_EQ(blank.length, measure::round_to_tape(plan.pieces[0].blank().length, measure::Unit::inch));
            EXPECT_EQ(blank.copies, 3);
            at = at - blank.length - 0.126_in;
            ++copies;
        }
        EXPECT_NEAR(at.inches(), 0, 1e-9);
    }
    EXPECT_EQ(copies, 3);
}

TEST(StockPlan, PricesDecideAgainstLength) {
    // Two blanks of some 58 in: a 12 ft board holds both, but two of 8 ft are on offer.
    const std::string pieces = board("B", "8 in", 2);
    const StockSection dear =
        planned(pieces, row("12 ft", "price = 30\n") + row("8 ft", "price = 12.5\n")).stock_plan->sections.at(0);
    EXPECT_TRUE(dear.priced);
    EXPECT_EQ(dear.cents, 2500);
    EXPECT_EQ(dear.to_buy.at(0).count, 2);
    const StockSection cheap =
        planned(pieces, row("12 ft", "price = 20\n") + row("8 ft", "price = 12.5\n")).stock_plan->sections.at(0);
    EXPECT_EQ(cheap.cents, 2000);
    EXPECT_EQ(cheap.to_buy.at(0).length, 144_in);
}

TEST(StockPlan, TheRackIsUsedFirstAndTheRestIsBought) {
    const StockPlan plan =
        *planned(board("B", "8 in", 2), row("8 ft", "price = 12.5\n") + row("66 in", "on_hand = 1\n")).stock_plan;
    const StockSection& section = plan.sections.at(0);
    ASSERT_EQ(section.sticks.size(), 2U);
    EXPECT_EQ(section.cents, 1250);
    EXPECT_TRUE(section.sticks[1].in_rack);
    EXPECT_EQ(section.sticks[1].length, 66_in);
}

TEST(StockPlan, NarrowBlanksAreRippedFromTheNarrowestThatIsWideEnough) {
    const StockSection section = planned(board("B", "8 in"), row("8 ft", "", "11 1/4 in") +
                                                                 row("8 ft", "", "9 1/4 in") + row("8 ft", "", "5 in"))
                                     .stock_plan->sections.at(0);
    EXPECT_EQ(section.width, 9.25_in);
    EXPECT_EQ(section.sticks.at(0).blanks.at(0).width, 7.25_in);
}

TEST(StockPlan, WhatNoBoardHoldsIsTold) {
    const StockPlan plan = *planned(liner("L", "9 ft") + board("B", "8 in"), row("8 ft")).stock_plan;
    ASSERT_EQ(plan.refused.size(), 1U);
    EXPECT_GT(plan.refused[0].at.line, 20);
    EXPECT_NE(plan.refused[0].message.find("no stock holds the blank of L"), std::string::npos);
    EXPECT_NE(plan.refused[0].hint.find("joint"), std::string::npos);
    ASSERT_EQ(plan.sections.at(0).no_room.size(), 1U);
    EXPECT_EQ(plan.sections[0].sticks.size(), 1U);
}

// Ends sawn off: a blank that the board as bought would hold may be too long for it.
std::string molded(const std::string& id, const std::string& tails) {
    return board(id, tails) +
           "profile = [[\"0 in\", \"3/4 in\"], [\"5 in\", \"3/4 in\"], [\"7 1/4 in\", \"3/8 in\"]]\n";
}

/// What the job lists and why it will not do: never that nothing is listed.
TEST(StockPlan, StockThatIsTooNarrowOrOfAnotherThicknessIsNotNone) {
    const StockSection narrow =
        planned(board("B", "8 in"), row("8 ft", "", "7 in") + row("8 ft", "", "5 in")).stock_plan->sections.at(0);
    EXPECT_TRUE(narrow.usual_lengths);
    ASSERT_TRUE(narrow.too_narrow);
    EXPECT_EQ(*narrow.too_narrow, 7_in);
    EXPECT_FALSE(narrow.other_thickness);
    const std::string thin =
        "[[stock.boards]]\nmaterial = \"mdf\"\nthickness = \"1/2 in\"\nwidth = \"9 in\"\nlength = \"8 ft\"\n";
    const StockSection other = planned(board("B", "8 in"), thin).stock_plan->sections.at(0);
    EXPECT_FALSE(other.too_narrow);
    ASSERT_TRUE(other.other_thickness);
    EXPECT_EQ(*other.other_thickness, 0.5_in);
    // One that will do is nothing to speak of; nor is a job that lists nothing.
    for (const std::string& stock : {row("8 ft") + row("8 ft", "", "7 in"), std::string()}) {
        const StockSection fits = planned(board("B", "8 in", 2), stock).stock_plan->sections.at(0);
        EXPECT_FALSE(fits.too_narrow || fits.other_thickness) << stock;
    }
}

/// Common practice, no source: a molded board is another piece of lumber than a flat one as thick and as wide.
TEST(StockPlan, MoldedBoardsShareNoStickWithFlatOnes) {
    const std::string rack = row("16 ft", "on_hand = 2\n") + row("16 ft");
    const Plan plan = planned(molded("M", "8 in") + board("F", "8 in"), rack);
    const std::vector<StockSection>& sections = plan.stock_plan->sections;
    ASSERT_EQ(sections.size(), 2U);
    EXPECT_NE(sections.at(0).profile, sections.at(1).profile);
    for (const StockSection& section : sections) {
        ASSERT_EQ(section.sticks.size(), 1U);
        ASSERT_EQ(section.sticks.front().blanks.size(), 1U);
        // Of two that differ by their profiles alone, what lies in the rack is the flat one.
        const bool flat = section.profile.empty();
        EXPECT_EQ(section.sticks.front().blanks.front().id, flat ? "F" : "M");
        EXPECT_EQ(section.sticks.front().in_rack, flat);
    }
    // Molded alike they are one thing.
    EXPECT_EQ(planned(molded("M", "8 in") + molded("N", "8 in"), rack).stock_plan->sections.size(), 1U);
}

TEST(StockPlan, TrimmedEndsCount) {
    const std::string arch = liner("B", "6 ft");
    const Length blank = planned(arch).pieces[0].blank().length;
    const std::string just = std::to_string(measure::round_to_tape(blank, measure::Unit::inch).inches() + 0.5) + " in";
    EXPECT_EQ(planned(arch, row(just)).stock_plan->refused.size(), 1U);
    EXPECT_EQ(planned(arch, "[stock]\nend_trim = \"1/4 in\"\n" + row(just)).stock_plan->refused.size(), 0U);
}

TEST(StockPlan, JobsAreBoughtForTogether) {
    const Plan a = planned(board("B", "8 in"));
    const Plan b = planned(board("C", "8 in"), row("12 ft"));
    const StockPlan together = make_stock_plan({&a, &b});
    ASSERT_EQ(together.sections.size(), 1U);
    ASSERT_EQ(together.sections[0].sticks.size(), 1U);
    EXPECT_EQ(together.sections[0].sticks[0].blanks.size(), 2U);
    EXPECT_EQ(together.sections[0].sticks[0].blanks[0].id, "7 B");
}

/// An arch with a casing that is sawn from boards.
std::string cased(const std::string& id, const std::string& board, int quantity) {
    std::string text = liner(id, "5 ft");
    text.replace(text.find("depth"), 0, "quantity = " + std::to_string(quantity) + "\n");
    return text + "[opening.casing]\nwidth = \"3 1/2 in\"\nsegments = 4\nboard = \"" + board + "\"\n";
}

TEST(StockPlan, CasingSegmentsLieEndToEndOnTheirBoards) {
    const Plan plan = planned(cased("A", "9 1/4 in", 3), "[stock]\nlengths = [\"8 ft\", \"12 ft\"]\n");
    const auto section = std::find_if(plan.stock_plan->sections.begin(), plan.stock_plan->sections.end(),
                                      [](const StockSection& one) { return one.casing; });
    ASSERT_NE(section, plan.stock_plan->sections.end());
    EXPECT_EQ(section->width, 9.25_in);
    EXPECT_TRUE(section->proved);
    EXPECT_TRUE(section->no_room.empty());
    const auto& segments = std::get<ArchLines>(plan.pieces[0].lines).segments;
    ASSERT_EQ(segments.size(), 4U);
    std::map<std::pair<int, int>, int> seen;
    Length cut;
    for (const CutStick& stick : section->sticks) {
        Length end = plan.stock_plan->end_trim - plan.stock_plan->kerf;
        for (const StockBlank& blank : stick.blanks) {
            ++seen[{blank.segment, blank.copy}];
            EXPECT_EQ(blank.id, "A");
            const CasingSegment& segment = segments.at(static_cast<std::size_t>(blank.segment) - 1);
            EXPECT_GE(blank.length, segment.board_length - 1e-6_mm);
            EXPECT_LE(blank.length, segment.board_length + 0.0625_in);
            EXPECT_LE(segment.board_width, section->width);
            end = end + plan.stock_plan->kerf + blank.length;
            cut = cut + blank.length;
        }
        EXPECT_LE(end, stick.length - plan.stock_plan->end_trim + 1e-6_mm);
    }
    EXPECT_EQ(seen.size(), 12U);
    for (const auto& [name, count] : seen) EXPECT_EQ(count, 1) << name.first << " " << name.second;
    EXPECT_GE(section->bought, cut);
    // From a sheet they are not in the list: they are nested.
    std::string from_sheet = cased("A", "9 1/4 in", 3);
    from_sheet.erase(from_sheet.find("board = "));
    const Plan nested = planned(from_sheet);
    for (const StockSection& one : nested.stock_plan->sections) EXPECT_FALSE(one.casing);
}

TEST(StockPlan, ASegmentThatNoBoardHoldsIsToldAsOne) {
    const Plan plan = planned(cased("A", "9 1/4 in", 2), "[stock]\nlengths = [\"12 in\"]\n");
    const auto told =
        std::find_if(plan.stock_plan->refused.begin(), plan.stock_plan->refused.end(),
                     [](const job::Diagnostic& one) { return one.hint.find("or more segments") != std::string::npos; });
    EXPECT_NE(told, plan.stock_plan->refused.end());
}

/// Each wall a little longer than the one before it: as many lengths as walls.
std::string many_walls(const std::string& name, int walls, double longer) {
    std::string text;
    for (int i = 0; i < walls; ++i) text += board(name + std::to_string(i), std::to_string(longer + i / 16.0) + " in");
    return text;
}

// One job holds at most 100 pieces; a house of jobs has more.
TEST(StockPlan, MoreBlanksThanAreSearchedArePlannedAndBounded) {
    const Plan a = planned(many_walls("W", 99, 0.5));
    const Plan b = planned(many_walls("V", 60, 7));
    const StockPlan together = make_stock_plan({&a, &b});
    ASSERT_EQ(together.sections.size(), 1U);
    const StockSection& section = together.sections.front();
    EXPECT_TRUE(together.refused.empty());
    ASSERT_EQ(a.pieces.size() + b.pieces.size(), 159U) << a.refused.size() << " refused";
    std::size_t cut = 0;
    Length all;
    for (const CutStick& stick : section.sticks)
        for (const StockBlank& blank : stick.blanks) {
            ++cut;
            all = all + blank.length;
        }
    EXPECT_EQ(cut, 159U);
    EXPECT_GE(section.bought - section.length_at_most, all) << "the bound holds";
    EXPECT_LT(section.length_at_most, section.bought / 10);
}

TEST(StockPlan, AMaterialThatNobodyKnowsIsToldInTheStockToo) {
    const std::string text = job_text(board("B", "8 in"),
                                      "[[stock.boards]]\nmaterial = \"mfd\"\nthickness = \"3/4 in\"\n"
                                      "width = \"7 in\"\nlength = \"8 ft\"\n");
    const auto plan = make_plan(job::read_job({"job.toml", text}).job);
    ASSERT_FALSE(plan.has_value());
    EXPECT_NE(plan.error().at(0).message.find("mfd"), std::string::npos);
}

}  // namespace
}  // namespace kerfpacket::plan
