// A board kerfed by one plan, held against another plan as a carpenter would: laid beside the new strips.

#include "plan/serves.h"

#include <gtest/gtest.h>

#include <functional>
#include <random>

#include "../../support/planned.h"

namespace kerfpacket::plan {
namespace {

using namespace tests;

/// Spacing and depth are given, so that kerfs stand at whole multiples of the spacing from zero.
job::Wall spaced() {
    job::Wall wall = tannery_row();
    wall.tails = {at_line(6_in, 15), at_line(6_in, 15)};
    wall.board.spacing.given = 0.5_in;
    wall.board.spacing.solve = false;
    wall.board.kerf_depth.given = 0.5_in;
    wall.board.kerf_depth.solve = false;
    wall.board.trim.value = 3_in;
    return wall;
}

std::array<Length, 2> without_trim(const Piece& piece) {
    return {piece.blank().trims[0], piece.blank().length - piece.blank().trims[0]};
}

Serves after(const std::function<void(job::Wall&)>& change, const job::Wall& before = spaced()) {
    job::Wall wall = before;
    change(wall);
    const Piece was = only_piece(before);
    const Piece now = only_piece(wall);
    return serves(was, now, without_trim(now));
}

TEST(Serves, TheSameBoardServesAsItIs) {
    const Serves same = after([](job::Wall&) {});
    EXPECT_EQ(same.unfit, Unfit::none);
    EXPECT_TRUE(same.to_add.empty());
    EXPECT_FALSE(same.deepen);
    EXPECT_EQ(same.longer, (std::array<Length, 2>{}));
}

TEST(Serves, AnotherBoardOrOtherKerfsAreScrap) {
    EXPECT_EQ(after([](job::Wall& wall) { wall.board.width.value += 0.5_in; }).unfit, Unfit::board);
    EXPECT_EQ(after([](job::Wall& wall) { wall.board.thickness.value -= 0.125_in; }).unfit, Unfit::board);
    EXPECT_EQ(after([](job::Wall& wall) { wall.board.material.value = "yellow-poplar"; }).unfit, Unfit::board);
    EXPECT_EQ(after([](job::Wall& wall) { wall.board.kerf_depth.given = 0.4_in; }).unfit, Unfit::too_deep);
    const Serves other = after([](job::Wall& wall) { wall.board.spacing.given = 0.45_in; });
    EXPECT_EQ(other.unfit, Unfit::kerfs);
    EXPECT_GT(other.misplaced, 1);
}

TEST(Serves, KerfsCanBeCutDeeper) {
    // A deeper kerf moves the line that keeps its length, and with it the ends of the bend: kerfs given one by one
    // stay.
    job::Wall by_hand = spaced();
    for (const Kerf& kerf : only_piece(by_hand).blank().kerfs) by_hand.board.kerfs.push_back(at_line(kerf.at, 30));
    by_hand.board.spacing = {};
    const Serves deeper = after([](job::Wall& wall) { wall.board.kerf_depth.given = 0.5625_in; }, by_hand);
    EXPECT_EQ(deeper.unfit, Unfit::none);
    EXPECT_TRUE(deeper.deepen);
    EXPECT_TRUE(deeper.to_add.empty());
}

TEST(Serves, WhatAnEndLacksIsBorneByTheTrimOrMakesItScrap) {
    const auto longer_at_the_right = [](Length by) {
        return after([by](job::Wall& wall) { wall.tails[1].value += by; });
    };
    const Serves little = longer_at_the_right(0.5_in);
    EXPECT_EQ(little.unfit, Unfit::none);
    EXPECT_NEAR(little.longer[0].mm(), 0, 1e-9);
    EXPECT_NEAR(little.longer[1].mm(), (-0.5_in).mm(), 1e-9);
    const Serves much = longer_at_the_right(4_in);
    EXPECT_EQ(much.unfit, Unfit::too_short);
    EXPECT_NEAR(much.missing.mm(), (1_in).mm(), 1e-9);
    const Serves shorter = longer_at_the_right(-1_in);
    EXPECT_EQ(shorter.unfit, Unfit::none);
    EXPECT_NEAR(shorter.longer[1].mm(), (1_in).mm(), 1e-9);
}

TEST(Serves, LessTrimMovesZeroAndNoKerf) {
    const Serves less = after([](job::Wall& wall) { wall.board.trim.value = 2_in; });
    EXPECT_EQ(less.unfit, Unfit::none);
    EXPECT_TRUE(less.to_add.empty());
    for (const Length longer : less.longer) EXPECT_NEAR(longer.mm(), (1_in).mm(), 1e-9);
}

TEST(Serves, WhereABendGrowsAtItsFarEndKerfsAreAddedThere) {
    const job::Wall before = spaced();
    const Serves more = after([](job::Wall& wall) {
        wall.angle->value = measure::Angle::degrees(93);
        wall.tails[1].value -= 3_in;
    });
    ASSERT_EQ(more.unfit, Unfit::none);
    ASSERT_FALSE(more.to_add.empty());
    const auto old_count = static_cast<int>(only_piece(before).blank().kerfs.size());
    EXPECT_EQ(more.to_add.front(), old_count + 1);
}

TEST(Serves, TheZeroEndMayChangeWhereKerfsStandAlikeFromBothEnds) {
    job::Wall before = spaced();
    before.board.spacing = {};  // as the program places them: evenly
    const Serves turned = after([](job::Wall& wall) { wall.board.zero = job::End::right; }, before);
    EXPECT_EQ(turned.unfit, Unfit::none);
    EXPECT_TRUE(turned.to_add.empty());
}

/// The old board laid on the new one, kerf by kerf: what is said of it must come out.
void expect_true(const Piece& was, const Piece& now, const Serves& told) {
    const std::array<Length, 2> kept = without_trim(now);
    std::vector<Length> on_new;  // places of the old kerfs on the new blank
    for (const Kerf& kerf : was.blank().kerfs) on_new.push_back(kerf.at - told.longer[0]);
    const auto near = [](Length a, Length b) { return measure::abs(a - b) <= same_kerf; };
    std::vector<int> missing;
    for (const Kerf& kerf : now.blank().kerfs)
        if (std::none_of(on_new.begin(), on_new.end(), [&](Length at) { return near(at, kerf.at); }))
            missing.push_back(kerf.n);
    EXPECT_EQ(missing, told.to_add);
    for (const Length at : on_new) {
        if (at < kept[0] || at > kept[1]) continue;
        const auto& kerfs = now.blank().kerfs;
        EXPECT_TRUE(std::any_of(kerfs.begin(), kerfs.end(), [&](const Kerf& kerf) { return near(at, kerf.at); }));
    }
    EXPECT_LE((-told.longer[0] - kept[0]).mm(), same_kerf.mm());
    EXPECT_LE((kept[1] + told.longer[0] - was.blank().length).mm(), same_kerf.mm());
}

TEST(Serves, WhatIsSaidComesOutWhenTheBoardsAreLaidOnEachOther) {
    std::mt19937 random(20261128);
    const auto among = [&](std::initializer_list<double> values) {
        return *(values.begin() + static_cast<std::ptrdiff_t>(random() % values.size()));
    };
    int served = 0;
    int scrap = 0;
    for (int i = 0; i < 60; ++i) {
        job::Wall before = spaced();
        before.tails[0].value = Length::inches(among({4, 5, 6.5}));
        job::Wall wall = before;
        wall.tails[0].value += Length::inches(among({0, 0.5, 1, -1}));
        wall.tails[1].value += Length::inches(among({0, 0.25, -2, 5}));
        wall.angle->value = measure::Angle::degrees(among({90, 88, 92}));
        wall.board.trim.value = Length::inches(among({2, 3, 3.5}));
        const Piece was = only_piece(before);
        const Piece now = only_piece(wall);
        const Serves told = serves(was, now, without_trim(now));
        SCOPED_TRACE(i);
        if (told.unfit == Unfit::none) {
            ++served;
            expect_true(was, now, told);
        } else ++scrap;
    }
    EXPECT_GT(served, 10);
    EXPECT_GT(scrap, 3);
}

}  // namespace
}  // namespace kerfpacket::plan
