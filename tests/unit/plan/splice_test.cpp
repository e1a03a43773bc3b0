// Boards of several blanks: where their joints lie, and that the blanks laid end to end are the board.

#include <cmath>

#include <gtest/gtest.h>

#include "job/read.h"
#include "plan/plan.h"
#include "plan/splice.h"

namespace kerfpacket::plan {
namespace {

using namespace measure::literals;

struct Wall {
    std::string radius = "6 ft 4 in";
    std::string angle = "74";
    std::string tails = "[\"7 ft 2 in\", \"4 ft 5 in\"]";
    std::string board = "";
    std::string stock = "[stock]\nlengths = [\"8 ft\", \"12 ft\", \"16 ft\"]\n";
    std::string side = "concave";
};

std::string text_of(const Wall& wall) {
    return "[job]\nnumber = \"7\"\ntitle = \"t\"\nrevision = \"A\"\ndate = 2026-11-28\nunits = \"in\"\n"
           "[saw]\nblade_diameter = 10\nkerf = 0.125\n[[wall]]\nid = \"S\"\nradius = \"" +
           wall.radius + "\"\nangle = " + wall.angle + "\nside = \"" + wall.side + "\"\ntails = " + wall.tails +
           "\n[wall.board]\nmaterial = \"mdf\"\nthickness = \"3/4 in\"\nwidth = \"7 1/4 in\"\n" + wall.board +
           wall.stock;
}

tl::expected<Plan, job::Diagnostics> planned(const Wall& wall) {
    const job::Source source{"job.toml", text_of(wall)};
    const job::Reading reading = job::read_job(source);
    EXPECT_TRUE(reading.diagnostics.empty()) << job::render(reading.diagnostics, source);
    return make_plan(reading.job);
}

Piece piece_of(const Wall& wall) {
    const auto plan = planned(wall);
    EXPECT_TRUE(plan.has_value()) << (plan ? std::string() : std::string(plan.error().front().message));
    return plan.value().pieces.at(0);
}

std::string refusal(const Wall& wall) {
    const auto plan = planned(wall);
    EXPECT_FALSE(plan.has_value());
    return plan ? "" : plan.error().front().message + " | " + plan.error().front().hint;
}

/// Counted again from nothing but the blanks: laid with their scarfs on each other they are the board.
void expect_to_be_the_board(const Piece& piece) {
    ASSERT_EQ(piece.blanks.size(), piece.joints.size() + 1);
    Length sum;
    std::vector<Length> kerfs;
    std::vector<Length> marks;
    Length from;
    for (std::size_t i = 0; i < piece.blanks.size(); ++i) {
        const Blank& blank = piece.blanks[i];
        EXPECT_EQ(blank.zero, piece.blank().zero);
        for (std::size_t k = 0; k < blank.kerfs.size(); ++k) {
            EXPECT_EQ(blank.kerfs[k].n, static_cast<int>(k) + 1);
            EXPECT_GT(blank.kerfs[k].at, Length());
            EXPECT_LT(blank.kerfs[k].at, blank.length);
            kerfs.push_back(from + blank.kerfs[k].at);
            marks.push_back(from + blank.kerfs[k].mark);
        }
        sum = sum + blank.length;
        EXPECT_GE(blank.length, least_blank);
        if (i == piece.joints.size()) break;
        from = from + blank.length - piece.joints[i].scarf;
        // The cuts of both are one plane: from the plain face of the one to the kerf face of the other.
        const BoardEnd& under = blank.ends[1];
        const BoardEnd& over = piece.blanks[i + 1].ends[0];
        EXPECT_EQ(under.meets, BoardEnd::Meets::blank);
        EXPECT_EQ(over.meets, BoardEnd::Meets::blank);
        EXPECT_NEAR((under.kerf_face - under.plain_face).mm(), piece.joints[i].scarf.mm(), 1e-9);
        EXPECT_NEAR((over.kerf_face - over.plain_face).mm(), piece.joints[i].scarf.mm(), 1e-9);
        EXPECT_NEAR(std::tan(under.mitre.radians()), piece.joints[i].scarf / piece.cut.thickness, 1e-9);
        EXPECT_NEAR((from + over.plain_face + piece.joints[i].scarf / 2 - piece.joints[i].at).mm(), 0, 1e-6);
        for (const Kerf& kerf : piece.blank().kerfs)
            EXPECT_FALSE(kerf.at + piece.cut.kerf / 2 > piece.joints[i].from() &&
                         kerf.at - piece.cut.kerf / 2 < piece.joints[i].to())
                << "kerf " << kerf.n << " stands in a scarf";
    }
    for (const Joint& joint : piece.joints) sum = sum - joint.scarf;
    EXPECT_NEAR((sum - piece.blank().length).mm(), 0, 1e-6);
    ASSERT_EQ(kerfs.size(), piece.blank().kerfs.size());
    for (std::size_t i = 0; i < kerfs.size(); ++i) {
        EXPECT_NEAR((kerfs[i] - piece.blank().kerfs[i].at).mm(), 0, 1e-6);
        EXPECT_NEAR((marks[i] - piece.blank().kerfs[i].mark).mm(), 0, 1e-6);
    }
}

// 7 ft 2 in, 98 in of bend, 4 ft 5 in and 3 in of trim at each end: 243 in, and 191 in can be had. One joint does, in
// the longer straight end.
TEST(Splice, LiesInAStraightEnd) {
    const Piece piece = piece_of({});
    ASSERT_EQ(piece.joints.size(), 1U);
    expect_to_be_the_board(piece);
    EXPECT_FALSE(piece.joints[0].in_bend);
    EXPECT_EQ(piece.joints[0].scarf, 0.75_in);
    EXPECT_NEAR(piece.joints[0].angle.degrees(), 45, 1e-9);
    EXPECT_LE(piece.joints[0].to(), piece.blank().kerfs.front().at);
    for (const Blank& blank : piece.blanks) EXPECT_LE(blank.length, 191_in);
    EXPECT_EQ(piece.cautions.end(), std::find_if(piece.cautions.begin(), piece.cautions.end(),
                                                 [](const Caution& one) { return one.key == "joint_in_bend"; }));
}

TEST(Splice, AShortBoardHasNone) {
    const Piece piece = piece_of({.tails = "[\"4 ft\", \"3 ft\"]"});
    EXPECT_FALSE(piece.spliced());
    ASSERT_EQ(piece.blanks.size(), 1U);
    EXPECT_EQ(piece.blanks[0].length, piece.blank().length);
}

TEST(Splice, IsTheSameBoardFromEitherEnd) {
    const Piece left = piece_of({.board = "zero = \"left\"\n"});
    const Piece right = piece_of({.board = "zero = \"right\"\n"});
    expect_to_be_the_board(right);
    ASSERT_EQ(right.joints.size(), left.joints.size());
    // The tape's steps count from zero, so that the place may differ by less than a step.
    EXPECT_NEAR((right.blank().from_left(right.joints[0].at) - left.blank().from_left(left.joints[0].at)).inches(), 0,
                0.5);
}

TEST(Splice, ABlankIsStraightUpToItsOwnCut) {
    // The joint lies in the longer straight end, 7 ft 2 in of it; the other, 4 ft 5 in, stays whole.
    for (const char* zero : {"left", "right"}) {
        const Piece piece = piece_of({.board = "zero = \"" + std::string(zero) + "\"\n"});
        const bool from_left = piece.blank().zero == job::End::left;
        const Blank& bent = from_left ? piece.blanks.back() : piece.blanks.front();
        EXPECT_NEAR(bent.tails[from_left ? 1 : 0].inches(), 53, 1e-6) << zero;
        const std::size_t joint = from_left ? 0 : 1;
        const Length straight =
            measure::abs((from_left ? bent.bend_start : bent.bend_end) - bent.ends[joint].plain_face);
        EXPECT_NEAR(bent.tails[joint].mm(), straight.mm(), 1e-9) << zero;
    }
}

TEST(Splice, KeepsOffWhereNoneMayLie) {
    // Of the straight ends only the last four feet of the right one are left.
    const Piece piece = piece_of({.board = "no_splice = [[\"0 in\", \"190 in\"]]\nmax_blank = \"19 ft\"\n",
                                  .stock = "[stock]\nlengths = [\"20 ft\"]\n"});
    expect_to_be_the_board(piece);
    ASSERT_EQ(piece.joints.size(), 1U);
    EXPECT_GE(piece.joints[0].from(), 190_in);
}

TEST(Splice, TheLongestThatCanBeCarriedCounts) {
    const Piece piece = piece_of({.board = "max_blank = \"11 ft\"\n"});
    expect_to_be_the_board(piece);
    for (const Blank& blank : piece.blanks) EXPECT_LE(blank.length, 132_in);
}

// 40 ft radius, no straight ends: a joint lies in the bend, its neighbours bear more and are judged so.
TEST(Splice, InAFlatBendItTakesKerfsAwayAndSaysSo) {
    const Wall wall{
        .radius = "40 ft", .angle = "30", .tails = "[\"0 in\", \"0 in\"]", .board = "spacing = \"1/2 in\"\n"};
    const Piece piece = piece_of(wall);
    expect_to_be_the_board(piece);
    ASSERT_FALSE(piece.joints.empty());
    const Joint& joint = piece.joints[0];
    EXPECT_TRUE(joint.in_bend);
    EXPECT_GE(joint.gone, 1);
    // Sagitta of the chord between the neighbours: g^2 / 8R (any handbook of mathematics).
    const auto after = std::find_if(piece.blank().kerfs.begin(), piece.blank().kerfs.end(),
                                    [&](const Kerf& kerf) { return kerf.at > joint.at; });
    const Length gap = after->at - (after - 1)->at;
    EXPECT_NEAR(joint.off.inches(), gap.inches() * gap.inches() / (8 * 480), 0.0005);
    EXPECT_LE(joint.off, most_flat);
    EXPECT_EQ(std::count_if(piece.cautions.begin(), piece.cautions.end(),
                            [](const Caution& one) { return one.key == "joint_in_bend"; }),
              1);
    // The kerf beside the joint bears for the ones that went: 3/4 in of scarf and half a spacing more.
    EXPECT_GT(after->spacing, 0.5_in);
    EXPECT_TRUE(piece.weak_links.empty()) << "it was judged so: nobody has to force what the program chose itself";
    Wall long_stock = wall;
    long_stock.stock = "[stock]\nlengths = [\"30 ft\"]\n";
    const Piece one = piece_of(long_stock);
    EXPECT_EQ(static_cast<int>(one.blank().kerfs.size()) - joint.gone * static_cast<int>(piece.joints.size()),
              static_cast<int>(piece.blank().kerfs.size()));
    EXPECT_LE(piece.bend.verdict, one.bend.verdict);
}

// What the neighbours of a joint bear is more than their strain: a board is never called worse for where it is joined.
TEST(Splice, NeverMakesTheVerdictWorse) {
    int in_bend = 0;
    for (const char* side : {"concave", "convex"})
        for (const char* depth :
             {"", "kerf_depth = \"11/16 in\"\n", "kerf_depth = \"5/8 in\"\n", "kerf_depth = \"1/2 in\"\n"})
            for (int feet = 7; feet <= 49; ++feet) {
                const Wall wall{.radius = std::to_string(feet) + " ft",
                                .angle = std::to_string(1200 / feet),
                                .tails = "[\"0 in\", \"0 in\"]",
                                .board = std::string("spacing = \"1/2 in\"\n") + depth,
                                .side = side};
                Wall long_stock = wall;
                long_stock.stock = "[stock]\nlengths = [\"40 ft\"]\n";
                const auto one = planned(long_stock), several = planned(wall);
                if (!one) continue;
                if (!several) continue;
                const Piece& piece = several->pieces.front();
                EXPECT_LE(piece.bend.verdict, one->pieces.front().bend.verdict) << side << " " << depth << feet;
                for (const Joint& joint : piece.joints) in_bend += joint.in_bend ? 1 : 0;
            }
    EXPECT_GT(in_bend, 300);
}

// R 3 ft: a flat of 1-3/4 in stands off by 0.01 in, but its neighbours would break.
TEST(Splice, IsRefusedWhereNoPlaceHolds) {
    const std::string said = refusal({.radius = "3 ft",
                                      .angle = "170",
                                      .tails = "[\"0 in\", \"0 in\"]",
                                      .board = "kerf_depth = \"3/8 in\"\nspacing = \"1/2 in\"\n",
                                      .stock = "[stock]\nlengths = [\"6 ft\"]\n"});
    EXPECT_NE(said.find("no place is left for a joint"), std::string::npos) << said;
    EXPECT_NE(said.find("would do"), std::string::npos) << said;
}

/// What a refusal names is what the next job is written with.
TEST(Splice, WhatARefusalNamesIsTaken) {
    const Wall refused{.radius = "80 in",
                       .angle = "170",
                       .tails = "[\"0 in\", \"0 in\"]",
                       .board = "scarf = \"3 in\"\n",
                       .stock = "[stock]\nlengths = [\"8 ft\", \"12 ft\"]\n"};
    const std::string said = refusal(refused);
    EXPECT_EQ(said.find("no_splice"), std::string::npos) << "nothing is kept out here: " << said;
    EXPECT_EQ(said.find("kerfs every"), std::string::npos) << "no spacing leaves a place: " << said;
    ASSERT_NE(said.find("stock of 252 in"), std::string::npos) << said;
    Wall longer = refused;
    longer.stock = "[stock]\nlengths = [\"252 in\"]\n";
    EXPECT_FALSE(piece_of(longer).spliced());

    Wall kept_out = refused;
    kept_out.board = "no_splice = [[\"3 in\", \"238 in\"]]\n";
    kept_out.angle = "60";
    kept_out.tails = "[\"40 in\", \"60 in\"]";
    EXPECT_NE(refusal(kept_out).find("less in no_splice"), std::string::npos) << refusal(kept_out);
    kept_out.board = "";
    EXPECT_TRUE(piece_of(kept_out).spliced());

    // A tail of 28 in takes half of a scarf of 8 in, not of one of 12 in, beside a blank of 24 in.
    Wall long_scarf = refused;
    long_scarf.tails = "[\"28 in\", \"0 in\"]";
    long_scarf.angle = "100";
    long_scarf.board = "scarf = \"16 in\"\n";
    const std::string shorter = refusal(long_scarf);
    const auto at = shorter.find("a scarf of ");
    ASSERT_NE(at, std::string::npos) << shorter;
    const std::string scarf = shorter.substr(at + 11, shorter.find(" in", at) - at - 11);
    long_scarf.board = "scarf = \"" + scarf + " in\"\n";
    EXPECT_TRUE(piece_of(long_scarf).spliced()) << scarf;

    Wall carried = refused;
    carried.board = "scarf = \"3 in\"\nmax_blank = \"100 in\"\n";
    const std::string both = refusal(carried);
    EXPECT_NE(both.find("max_blank of 241-11/16 in and stock of 252 in"), std::string::npos) << both;
    carried.stock = longer.stock;
    EXPECT_EQ(refusal(carried).find("stock of"), std::string::npos) << "it is long enough";
    carried.board = "scarf = \"3 in\"\nmax_blank = \"241 11/16 in\"\n";
    EXPECT_FALSE(piece_of(carried).spliced());
}

TEST(Splice, JointsOutOfOrderAreRefused) {
    const std::string said = refusal({.board = "joints = [\"16 ft 3 in\", \"5 ft 1 in\"]\n"});
    EXPECT_NE(said.find("the joint at 61 in comes after the one at 195 in"), std::string::npos) << said;
    EXPECT_NE(said.find("rising order"), std::string::npos) << said;
}

TEST(Splice, WishesAreTakenOrRefusedWithTheNearestPlace) {
    const Piece piece = piece_of({.board = "joints = [\"5 ft 1 in\", \"16 ft 3 in\"]\n"});
    expect_to_be_the_board(piece);
    ASSERT_EQ(piece.joints.size(), 2U);
    EXPECT_EQ(piece.joints[0].at, 61_in);
    EXPECT_EQ(piece.joints[1].at, 195_in);
    EXPECT_NE(refusal({.board = "joints = [\"20 in\"]\n"}).find("shorter than 24 in"), std::string::npos);
    const std::string out = refusal({.board = "joints = [\"60 in\"]\nno_splice = [[\"58 in\", \"64 in\"]]\n"});
    EXPECT_NE(out.find("no_splice"), std::string::npos) << out;
    EXPECT_NE(out.find("the nearest place is 57-1/2 in"), std::string::npos) << out;
    const std::string far = refusal({.board = "joints = [\"3 ft\"]\n"});
    EXPECT_NE(far.find("the longest that can be had is 191 in"), std::string::npos) << far;
}

TEST(Splice, ABoardWithAKerfTooDeepIsCutAlready) {
    EXPECT_FALSE(piece_of({.board = "too_deep = [[3, \"5/8 in\"]]\n"}).spliced());
    EXPECT_NE(refusal({.board = "too_deep = [[3, \"5/8 in\"]]\njoints = [\"60 in\"]\n"}).find("counted from 1"),
              std::string::npos);
}

// Nobody told what can be bought: the board stays whole, unless it could not be carried.
TEST(Splice, WithoutStockOnlyWhatIsAskedForDividesABoard) {
    Wall wall;
    wall.stock = "";
    EXPECT_FALSE(piece_of(wall).spliced());
    wall.board = "max_blank = \"17 ft\"\n";
    const Piece piece = piece_of(wall);
    expect_to_be_the_board(piece);
    EXPECT_TRUE(piece.spliced());
    wall.board = "joints = [\"5 ft 1 in\"]\n";
    EXPECT_EQ(piece_of(wall).joints.size(), 1U);
}

TEST(Splice, EachBlankIsABoardOfItsOwn) {
    const Piece piece = piece_of({.board = "joints = [\"5 ft 1 in\", \"16 ft 3 in\"]\n"});
    int kerfs = 0;
    for (std::size_t i = 0; i < piece.blanks.size(); ++i) {
        const Piece one = piece.of_blank(i);
        EXPECT_EQ(one.id, "S/" + std::to_string(i + 1));
        EXPECT_FALSE(one.spliced());
        EXPECT_TRUE(one.blank().is_part());
        kerfs += static_cast<int>(one.blank().kerfs.size());
    }
    EXPECT_EQ(kerfs, static_cast<int>(piece.blank().kerfs.size()));
    EXPECT_TRUE(piece.of_blank(0).blank().kerfs.empty());
    EXPECT_EQ(piece.of_blank(0).blank().trims[1], Length());
    EXPECT_EQ(piece.of_blank(1).blank().trims[0], Length());
}

TEST(Splice, TheStockPlanHasEachBlank) {
    const Plan plan = planned({}).value();
    ASSERT_TRUE(plan.stock_plan.has_value());
    EXPECT_EQ(plan.blanks(), 2);
    std::vector<std::string> ids;
    for (const CutStick& stick : plan.stock_plan->sections.at(0).sticks)
        for (const StockBlank& blank : stick.blanks) ids.push_back(blank.id);
    std::sort(ids.begin(), ids.end());
    EXPECT_EQ(ids, (std::vector<std::string>{"S/1", "S/2"}));
    EXPECT_TRUE(plan.stock_plan->refused.empty());
}

}  // namespace
}  // namespace kerfpacket::plan
