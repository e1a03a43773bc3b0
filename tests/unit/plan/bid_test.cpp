// What a bid is reckoned from, counted again by hand.

#include "plan/bid.h"

#include <gtest/gtest.h>

#include <cmath>

#include "../../support/jobs.h"
#include "plan/make_stock_plan.h"

namespace kerfpacket::plan {
namespace {

using namespace tests;
using job::Rate;

Plan planned(const job::Job& job) {
    auto plan = make_plan(job);
    if (!plan) throw std::runtime_error(plan.error().front().message);
    return *plan;
}

/// Two walls alike, 7-1/4 in wide, on 20 ft boards.
job::Job two_walls() {
    job::Job job = job_of(harbor_stair());
    job.walls.front().quantity = 2;
    job.stock.lengths = {at_line(240_in, 50)};
    return job;
}

int count_of(const BidCounts& counts, Rate rate) {
    for (const Work& work : counts.work)
        if (work.rate == rate) return work.count;
    return 0;
}

TEST(Bid, CountsWhatThePlanHas) {
    const Plan plan = planned(two_walls());
    const BidCounts counts = bid_counts(plan, 3);
    const Piece& piece = plan.pieces.front();
    ASSERT_FALSE(piece.spliced());
    const auto kerfs = static_cast<int>(piece.whole.kerfs.size());
    ASSERT_GT(kerfs, 100);
    EXPECT_EQ(counts.blanks, 2);
    EXPECT_EQ(count_of(counts, Rate::minutes_kerf), 2 * kerfs);
    EXPECT_NEAR(counts.kerf_stroke.inches(), 2 * kerfs * 7.25, 1e-6);
    // Each of two boards of stock has one end trimmed and one blank cut off.
    ASSERT_TRUE(plan.stock_plan);
    EXPECT_EQ(count_of(counts, Rate::minutes_crosscut), 4);
    EXPECT_EQ(count_of(counts, Rate::minutes_rip), 0);
    EXPECT_EQ(count_of(counts, Rate::minutes_joint), 0);
    // Two walls of each kerf, 3/8 in deep.
    EXPECT_NEAR(counts.glue_area_mm2 / (25.4 * 25.4), 2 * kerfs * 2 * 0.375 * 7.25, 1e-3);
}

/// A kerf of a board that climbs runs askew from edge to edge: Pythagoras over the board's width and how much further
/// from zero the kerf meets the other edge.
TEST(Bid, AKerfThatIsCutAskewIsAsLongAsItIs) {
    job::Job job = two_walls();
    job.walls.front().rake.emplace();
    job.walls.front().rake->slope = at_line(measure::Angle::degrees(33.5), 20);
    job.walls.front().rake->climbs = at_line(job::End::right, 21);
    job.stock.lengths = {at_line(200_in, 50)};
    const Plan plan = planned(job);
    const Piece& piece = plan.pieces.front();
    int kerfs = 0;
    double stroke = 0;
    for (const Blank& blank : piece.blanks) {
        ASSERT_GT(measure::abs(blank.lean), 2_in);
        kerfs += 2 * static_cast<int>(blank.kerfs.size());
        stroke += 2 * static_cast<double>(blank.kerfs.size()) * std::hypot(7.25, blank.lean.inches());
    }
    const BidCounts counts = bid_counts(plan, 3);
    EXPECT_NEAR(counts.kerf_stroke.inches(), stroke, 1e-6);
    EXPECT_GT(counts.kerf_stroke.inches(), kerfs * 7.25 * 1.1);
    double glue = 2 * piece.cut.depth.inches() * stroke;
    // A scarf's face is as long from edge to edge as a kerf; its slope is told along the edge.
    const double askew = std::hypot(7.25, piece.blanks.front().lean.inches());
    for (const Joint& joint : piece.joints) glue += 2 * askew * std::hypot(joint.scarf.inches() * 7.25 / askew, 0.75);
    EXPECT_NEAR(counts.glue_area_mm2 / (25.4 * 25.4), glue, 1e-3);
}

// A segmental head meets both legs at a corner: liner and leg are each mitred there. A splayed liner is sawn to its
// template, and its legs are bevelled along their edges.
TEST(Bid, OnlyTheLegsOfAPlumbJambAreMitred) {
    job::Opening opening = lantern_court();
    opening.shape.value = job::Shape::segmental;
    opening.span = at_line(50_in, 23);
    opening.rise = at_line(10_in, 24);
    opening.legs = {at_line(70_in, 25), at_line(70_in, 25)};
    opening.through_legs = true;
    opening.liner.trim.value = 2_in;
    const auto mitres = [](const job::Opening& of) {
        const Plan plan = planned(job_of(of));
        EXPECT_EQ(plan.pieces.front().leg_boards.size(), 2U);
        return count_of(bid_counts(plan, 0), Rate::minutes_mitre);
    };
    const int plumb = mitres(opening);
    opening.splay = job::Splay{at_line(measure::Angle::degrees(12), 41), job::Edge::narrow, job::Toward::room, {40, 1}};
    EXPECT_EQ(plumb, 4);
    EXPECT_EQ(mitres(opening), 0);
}

TEST(Bid, ARipIsCountedForABlankNarrowerThanItsBoard) {
    job::Job job = two_walls();
    job.stock.boards = {{at_line<std::string>("mdf", 51),
                         at_line(0.75_in, 52),
                         at_line(9.25_in, 53),
                         at_line(240_in, 54),
                         4000,
                         std::nullopt,
                         {51, 1}}};
    const BidCounts counts = bid_counts(planned(job), 3);
    EXPECT_EQ(count_of(counts, Rate::minutes_rip), 2);
    EXPECT_GT(counts.ripped, 400_in);
}

TEST(Bid, ASumStandsOnlyWhereAllItsRatesAreGiven) {
    job::Job job = two_walls();
    job.stock.boards = {{at_line<std::string>("mdf", 51),
                         at_line(0.75_in, 52),
                         at_line(7.25_in, 53),
                         at_line(240_in, 54),
                         4000,
                         std::nullopt,
                         {51, 1}}};
    const Plan plan = planned(job);
    const BidCounts counts = bid_counts(plan, 3);
    job::Rates rates;
    const auto give = [&](Rate rate, double value) { rates.given.at(static_cast<std::size_t>(rate)) = value; };
    BidSums sums = bid_sums(counts, plan, rates, 20);
    EXPECT_EQ(sums.stock, 80.0);
    EXPECT_FALSE(sums.minutes || sums.labour || sums.paper || sums.glue || sums.blade || sums.all());
    give(Rate::minutes_kerf, 0.5);
    give(Rate::minutes_crosscut, 2);
    EXPECT_FALSE(bid_sums(counts, plan, rates, 20).minutes);
    give(Rate::minutes_coupon, 15);
    give(Rate::hour, 60);
    give(Rate::paper, 0.1);
    give(Rate::glue, 9);
    give(Rate::glue_covers, 10);
    give(Rate::sharpening, 20);
    sums = bid_sums(counts, plan, rates, 20);
    const int kerfs = count_of(counts, Rate::minutes_kerf);
    ASSERT_TRUE(sums.minutes && sums.labour && sums.paper && sums.glue);
    EXPECT_NEAR(*sums.minutes, kerfs * 0.5 + 4 * 2 + 3 * 15, 1e-9);
    EXPECT_NEAR(*sums.labour, *sums.minutes, 1e-9);
    EXPECT_NEAR(*sums.paper, 2, 1e-9);
    EXPECT_NEAR(*sums.glue, 9 * std::ceil(kerfs * 2 * 0.375 * 7.25 / 144 / 10), 1e-9);
    EXPECT_FALSE(sums.all());
    give(Rate::blade_lasts, 1000);
    sums = bid_sums(counts, plan, rates, 20);
    ASSERT_TRUE(sums.blade && sums.all());
    EXPECT_NEAR(*sums.blade, 20 * kerfs * 7.25 / 12 / 1000, 1e-9);
    EXPECT_NEAR(*sums.all(), *sums.labour + 80 + 2 + *sums.glue + *sums.blade, 1e-9);
}

/// Work is that of each job; boards are those of the purchase for both.
TEST(Bid, OfSeveralJobsIsThatOfEachButForTheBoards) {
    const Plan one = planned(two_walls());
    Plan other = one;
    other.header.number = "B-2";
    const StockPlan stock = make_stock_plan({&one, &other});
    const BidCounts alone = bid_counts(one, 3);
    const BidCounts both = bid_counts(House({&one, &other}, &stock), 6);
    for (const Rate rate : {Rate::minutes_kerf, Rate::minutes_mitre, Rate::minutes_joint})
        EXPECT_EQ(count_of(both, rate), 2 * count_of(alone, rate)) << static_cast<int>(rate);
    EXPECT_EQ(both.blanks, 2 * alone.blanks);
    EXPECT_NEAR(both.kerf_stroke.mm(), 2 * alone.kerf_stroke.mm(), 1e-6);
    EXPECT_NEAR(both.glue_area_mm2, 2 * alone.glue_area_mm2, 1e-6);
    std::size_t sticks = 0, blanks = 0;
    for (const StockSection& section : stock.sections)
        for (const CutStick& stick : section.sticks) {
            ++sticks;
            blanks += stick.blanks.size();
        }
    EXPECT_EQ(count_of(both, Rate::minutes_crosscut), static_cast<int>(sticks + blanks));
    EXPECT_EQ(blanks, 4U);
}

/// Of a sheet: a rip for each strip and each trimmed edge, a crosscut for each blank and each trimmed strip.
TEST(Bid, RipsAndCrosscutsOfSheetsAreCountedAndTheirPrice) {
    job::Job job = two_walls();
    job.stock.sheets = {{at_line<std::string>("mdf", 51),
                         at_line(0.75_in, 52),
                         at_line(49_in, 53),
                         at_line(240_in, 54),
                         9000,
                         std::nullopt,
                         {51, 1}}};
    const Plan plan = planned(job);
    ASSERT_EQ(plan.stock_plan->sheets.size(), 1U);
    ASSERT_TRUE(plan.stock_plan->sections.empty());
    int strips = 0, blanks = 0, sheets = 0;
    for (const CutSheet& sheet : plan.stock_plan->sheets.front().sheets) {
        ++sheets;
        for (const CutStrip& strip : sheet.strips) {
            ++strips;
            blanks += static_cast<int>(strip.cut.blanks.size());
        }
    }
    const BidCounts counts = bid_counts(plan, 3);
    EXPECT_EQ(blanks, 2);
    EXPECT_EQ(count_of(counts, Rate::minutes_rip), strips + sheets);
    EXPECT_EQ(count_of(counts, Rate::minutes_crosscut), blanks + strips);
    EXPECT_NEAR(counts.ripped.inches(), (strips + sheets) * 240, 1e-6);
    EXPECT_EQ(bid_sums(counts, plan, {}, 1).stock, sheets * 90.0);
}

TEST(Bid, CasingBoardsHaveNoPriceAndSpoilNoSum) {
    job::Opening arch = alder_court();
    arch.casing.emplace();
    arch.casing->width = at_line(3_in, 41);
    arch.casing->segments = at_line(4, 43);
    arch.casing->board = at_line(11.25_in, 44);
    job::Job job = job_of(arch);
    job.stock.boards = {{at_line(arch.liner.material.value, 51),
                         at_line(arch.liner.thickness.value, 52),
                         at_line(arch.liner.width.value, 53),
                         at_line(240_in, 54),
                         4000,
                         std::nullopt,
                         {51, 1}}};
    const Plan plan = planned(job);
    int casing = 0;
    for (const StockSection& section : plan.stock_plan->sections) casing += section.casing && !section.to_buy.empty();
    ASSERT_EQ(casing, 1);
    const auto sum = bid_sums(bid_counts(plan, 3), plan, {}, 1).stock;
    ASSERT_TRUE(sum);
    EXPECT_EQ(std::fmod(*sum, 40.0), 0);
    EXPECT_GT(*sum, 0);
}

TEST(Bid, ABlankThatNothingHoldsTakesTheBoardsOutOfTheSum) {
    job::Job job = two_walls();
    job.stock.lengths.clear();
    job.stock.boards = {{at_line<std::string>("mdf", 51),
                         at_line(0.75_in, 52),
                         at_line(7.25_in, 53),
                         at_line(240_in, 54),
                         std::nullopt,
                         1,
                         {51, 1}},
                        {at_line<std::string>("mdf", 55),
                         at_line(0.75_in, 56),
                         at_line(7.25_in, 57),
                         at_line(30_in, 58),
                         900,
                         std::nullopt,
                         {55, 1}}};
    Plan plan = planned(job);
    for (StockSection& section : plan.stock_plan->sections)
        if (section.no_room.empty()) section.no_room = {section.sticks.front().blanks.front()};
    const BidCounts counts = bid_counts(plan, 3);
    EXPECT_GT(counts.unplanned, 0);
    EXPECT_FALSE(bid_sums(counts, plan, {}, 1).stock);
}

TEST(Bid, NoSumOfBoardsWhereOneHasNoPriceOrABlankNoBoard) {
    const Plan unpriced = planned(two_walls());
    EXPECT_FALSE(bid_sums(bid_counts(unpriced, 3), unpriced, {}, 1).stock);
}

}  // namespace
}  // namespace kerfpacket::plan
