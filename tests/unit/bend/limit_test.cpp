// What limits a bend, what small errors do to it, and what to do about one kerf that is too deep.

#include "bend/limit.h"

#include <algorithm>

#include <gtest/gtest.h>

#include "bend/assess.h"
#include "bend/overcut.h"
#include "bend/sensitivity.h"

namespace kerfpacket::bend {
namespace {

using namespace measure::literals;

const Cell usual{0.75_in, 0.375_in, 0.118_in, 0.5_in};

const Material& mdf() { return *find_material("mdf"); }

bool ok(const Cell& cell, KerfsOn side, Length radius) {
    const Assessment a = assess(cell, mdf(), side, radius, Angle::degrees(1), 1);
    return a.verdict == Verdict::ok;
}

TEST(Tightest, is_where_the_verdict_turns) {
    for (const KerfsOn side : {KerfsOn::inside, KerfsOn::outside})
        for (const double depth : {0.25, 0.375, 0.5, 0.625})
            for (const double spacing : {0.25, 0.5, 0.75}) {
                const Cell cell{0.75_in, Length::inches(depth), 0.118_in, Length::inches(spacing)};
                const Length radius = tightest(cell, mdf(), side).radius;
                EXPECT_TRUE(ok(cell, side, radius * 1.0001)) << depth << ' ' << spacing;
                EXPECT_FALSE(ok(cell, side, radius * 0.9999)) << depth << ' ' << spacing;
                const Length careful = tightest(cell, mdf(), side, Verdict::caution).radius;
                EXPECT_LT(careful, radius);
                EXPECT_EQ(assess(cell, mdf(), side, careful * 0.9999, Angle::degrees(1), 1).verdict,
                          Verdict::break_likely);
                EXPECT_NE(assess(cell, mdf(), side, careful * 1.0001, Angle::degrees(1), 1).verdict,
                          Verdict::break_likely);
            }
}

TEST(Tightest, names_what_limits) {
    EXPECT_EQ(tightest(usual, mdf(), KerfsOn::outside).limit, Limit::peel);
    EXPECT_EQ(tightest(usual, mdf(), KerfsOn::inside).limit, Limit::strain);
    EXPECT_EQ(tightest({0.75_in, 0.65_in, 0.03_in, 0.9_in}, mdf(), KerfsOn::inside).limit, Limit::closing);
    Material tough = mdf();
    tough.break_strain_outside = 0.5;
    tough.peel.reset();
    EXPECT_EQ(tightest({0.75_in, 0.375_in, 0.118_in, 1_in}, tough, KerfsOn::outside).limit, Limit::facet);
    EXPECT_EQ(tightest(usual, *find_material("red-oak"), KerfsOn::outside).limit, Limit::strain);
}

TEST(PlainRadius, lies_the_length_keeping_depth_from_the_line) {
    const Length below = length_keeping_depth(usual, mdf().softness);
    EXPECT_NEAR((30_in - plain_radius(usual, mdf(), KerfsOn::outside, 30_in) - below).mm(), 0, 1e-12);
    EXPECT_NEAR((plain_radius(usual, mdf(), KerfsOn::inside, 30_in) - 30_in - below).mm(), 0, 1e-12);
}

TEST(Sensitivity, is_the_assessment_of_the_changed_board) {
    const Steps steps{0.015625_in, 0.03125_in, 0.03125_in};
    const auto changes = sensitivity(usual, mdf(), KerfsOn::outside, 60_in, steps);
    ASSERT_EQ(changes.size(), 6U);
    const auto used = [](Cell cell) {
        return assess(cell, mdf(), KerfsOn::outside, 60_in, Angle::degrees(1), 1).utilisation;
    };
    EXPECT_EQ(changes[0].by, -steps.depth);
    EXPECT_DOUBLE_EQ(changes[1].utilisation, used({0.75_in, 0.375_in + steps.depth, 0.118_in, 0.5_in}));
    EXPECT_DOUBLE_EQ(changes[3].utilisation, used({0.75_in, 0.375_in, 0.118_in, 0.5_in + steps.spacing}));
    EXPECT_DOUBLE_EQ(changes[4].utilisation, used({0.75_in, 0.375_in, 0.118_in - steps.kerf, 0.5_in}));
    EXPECT_GT(changes[0].utilisation, changes[1].utilisation) << "shallower kerfs strain the web more";
    EXPECT_TRUE(std::none_of(changes.begin(), changes.end(), [](const Change& c) { return c.impossible; }));
}

TEST(Sensitivity, says_where_nothing_is_left) {
    const Cell thin{0.75_in, 0.74_in, 0.118_in, 0.13_in};
    const auto changes = sensitivity(thin, mdf(), KerfsOn::outside, 60_in, {0.03_in, 0.03_in, 0.03_in});
    EXPECT_FALSE(changes[0].impossible);
    EXPECT_TRUE(changes[1].impossible) << "no web";
    EXPECT_TRUE(changes[2].impossible) << "no land";
    EXPECT_TRUE(changes[5].impossible) << "no land";
}

Overcut cut_to(Length depth, Length radius = 60_in) { return overcut(usual, mdf(), KerfsOn::outside, radius, depth); }

TEST(ACutTooDeep, strains_its_web_by_the_square) {
    Material plain = mdf();
    plain.peel.reset();
    const Overcut deep = overcut(usual, plain, KerfsOn::outside, 60_in, 0.4375_in);
    EXPECT_NEAR(deep.alone / deep.before, (0.375 / 0.3125) * (0.375 / 0.3125), 1e-12);
    EXPECT_LT(deep.eased, deep.alone);
    EXPECT_NEAR(deep.ease_depth.inches(), 0.40625, 1e-12);
    EXPECT_NEAR(deep.web.inches(), 0.3125, 1e-12);
}

TEST(ACutTooDeep, is_kept_eased_filled_or_scrapped) {
    EXPECT_EQ(cut_to(0.376_in).mend, Mend::keep);
    EXPECT_EQ(cut_to(0.75_in).mend, Mend::scrap) << "cut through";
    EXPECT_EQ(cut_to(0.73_in).mend, Mend::scrap) << "a web of a fiftieth of an inch tears";
    EXPECT_EQ(cut_to(0.7_in).mend, Mend::fill) << "neighbours take its share at this radius";
    EXPECT_EQ(cut_to(0.7_in, 30_in).mend, Mend::scrap) << "and do not at half of it";
    Mend before = Mend::keep;
    for (int i = 0; i <= 24; ++i) {
        const Mend now = cut_to(0.375_in + 0.015625_in * i).mend;
        EXPECT_GE(now, before) << i;
        before = now;
    }
}

TEST(ACutTooDeep, has_limits_that_agree_with_the_single_answers) {
    const Length step = 0.015625_in;
    const OvercutLimits limits = overcut_limits(usual, mdf(), KerfsOn::outside, 60_in, step);
    EXPECT_EQ(cut_to(limits.keep).mend, Mend::keep);
    EXPECT_GT(cut_to(limits.keep + step).mend, Mend::keep);
    EXPECT_LE(cut_to(limits.ease).mend, Mend::ease);
    EXPECT_GT(cut_to(limits.ease + step).mend, Mend::ease);
    EXPECT_LE(cut_to(limits.fill).mend, Mend::fill);
    EXPECT_EQ(cut_to(limits.fill + step).mend, Mend::scrap);
    EXPECT_GT(limits.keep, usual.depth);
    EXPECT_GE(limits.ease, limits.keep);
    EXPECT_GE(limits.fill, limits.ease);
}

}  // namespace
}  // namespace kerfpacket::bend
