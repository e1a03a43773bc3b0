// What is told of a chance, against boards that are drawn: lognormal as the program thinks of them, and Weibull, which
// it does not. Coupons are cut from them, bent, and read with a tape's errors.
#include "bend/chance.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <random>

#include <gtest/gtest.h>

#include "bend/assess.h"
#include "bend/coupon.h"

namespace kerfpacket::bend {
namespace {

using namespace measure::literals;

const Material& mdf() { return *find_material("mdf"); }
const Scatter parts = scatter_of(usual_scatter);

enum class Drawn { lognormal, weibull };

/// A factor about 1 with that scatter.
class Draw {
public:
    Draw(Drawn kind, unsigned seed) : kind_(kind), random_(seed) {}

    double factor(double scatter) {
        if (kind_ == Drawn::lognormal) return std::exp(scatter * normal_(random_));
        // Shape for that coefficient of variation: Justus's approximation, 1978, from memory.
        const double shape = std::pow(scatter, -1.086);
        const double even = std::uniform_real_distribution<double>(1e-12, 1)(random_);
        return std::pow(-std::log(even), 1 / shape) / std::tgamma(1 + 1 / shape);
    }
    double within(double low, double high) { return std::uniform_real_distribution<double>(low, high)(random_); }

private:
    Drawn kind_;
    std::mt19937 random_;
    std::normal_distribution<double> normal_;
};

/// The weakest of so many kerfs of a board of that strength.
double weakest(double board, int kerfs, Draw& draw) {
    double least = 1e9;
    for (int i = 0; i < kerfs; ++i) least = std::min(least, board * draw.factor(parts.spot));
    return least;
}

const Cell cut{0.75_in, 0.375_in, 0.118_in, 0.375_in};

/// Bent round ever smaller discs until it broke at that strain, then read with a tape.
Coupon bent_to(double strain, Draw& draw) {
    const Length line = least_radius(cut, mdf().softness, strain);
    const double plain = (line - length_keeping_depth(cut, mdf().softness)).inches();
    const double chord = std::min(12.0, plain * 1.7);
    const double rise = plain - std::sqrt(plain * plain - chord * chord / 4);
    const auto read = [&](double inches) { return Length::inches(inches + draw.within(-1.0 / 16, 1.0 / 16)); };
    return {read(chord), read(rise), Held::disc, KerfsOn::outside};
}

struct Told {
    int boards = 0;
    int broken = 0;
    double part() const { return boards > 0 ? static_cast<double>(broken) / boards : 0; }
};

constexpr int kerfs = 80;

/// What depth and radius may be off, and the formula: bounds, and the deviation that the program takes for them.
const double depth_bound = 0.03;
const double tape_bound = 0.05;
const double formula_bound = 0.048;
const double load = std::hypot(depth_bound, tape_bound, formula_bound) / std::sqrt(3.0);

/// Boards by what was told of them. A coupon as the board is cut, and trials of other boards of the shop.
std::map<int, Told> simulate(Drawn kind, int coupons, int trials, unsigned seed) {
    Draw draw(kind, seed);
    const double limit = break_strain(cut, mdf(), KerfsOn::outside);
    std::map<int, Told> told;
    for (int n = 0; n < 24000; ++n) {
        const double shop = draw.factor(parts.shop);
        const double board = shop * draw.factor(parts.board);
        Knowledge known;
        const auto read = [&](double strength, bool own) {
            const Coupon coupon = bent_to(limit * weakest(strength, 30, draw), draw);
            const double ratio = std::log(coupon_strain(coupon, cut, mdf().softness) / limit);
            const double reading = coupon_error(coupon, coupon_reading, coupon_reading) / std::sqrt(3.0);
            const Weakest bent = weakest_of(kerfs_at_most(coupon, cut.spacing));
            if (own) known.take_coupon(Mode::strain, ratio, reading, bent);
            else known.take_trial(Mode::strain, ratio, reading, bent);
        };
        for (int i = 0; i < trials; ++i) read(shop * draw.factor(parts.board), false);
        for (int i = 0; i < coupons; ++i) read(board, true);
        const double u = draw.within(0.3, 1.1);
        const Link link{-std::log(u) + known.mean(Mode::strain), std::hypot(known.spread(Mode::strain), load), kerfs};
        Told& band = told[one_in(chance_of_breaking({link}, known.spot()))];
        const double off = (1 + draw.within(-depth_bound, depth_bound)) * (1 + draw.within(-tape_bound, tape_bound)) *
                           (1 + draw.within(-formula_bound, formula_bound));
        ++band.boards;
        if (u * off > weakest(board, kerfs, draw)) ++band.broken;
    }
    return told;
}

struct Case {
    Drawn kind;
    int coupons;
    int trials;
};

class Simulated : public testing::TestWithParam<Case> {};

/// Of the part that broke, twice its standard deviation where that many boards break one in so many.
double luck(double part, int boards) { return 2 * std::sqrt(part * (1 - part) / boards); }

// Of boards told "about 1 in 20" between 1 in 40 and 1 in 10 break, and so those told 1 in 10 and 1 in 4; of those told
// "fewer than 1 in 100", which is what ok rests on, no more than 1 in 100. Those told 1 in 50 break no oftener than 1
// in 25; lognormal boards much seldomer, since the words leave room for Weibull ones.
TEST_P(Simulated, break_as_often_as_they_are_told_to) {
    const auto [kind, coupons, trials] = GetParam();
    std::map<int, Told> all = simulate(kind, coupons, trials, 20260611U + static_cast<unsigned>(coupons * 10 + trials));
    for (const auto& [words, band] : all)
        RecordProperty("told_1_in_" + std::to_string(words),
                       std::to_string(band.broken) + " of " + std::to_string(band.boards));
    EXPECT_GT(all[100].boards, 1000);
    EXPECT_LE(all[100].part(), 0.01);
    for (const int words : {50, 20, 10, 4}) {
        const Told& band = all[words];
        ASSERT_GT(band.boards, 400) << words;
        const double most = 2.0 / words;
        const double least = words == 50 ? 0 : 0.5 / words;
        EXPECT_LE(band.part(), most + luck(most, band.boards)) << "told 1 in " << words << " of " << band.boards;
        EXPECT_GE(band.part(), least - luck(least, band.boards)) << "told 1 in " << words << " of " << band.boards;
    }
    EXPECT_GT(all[1].part(), 0.5);
}

INSTANTIATE_TEST_SUITE_P(Chance, Simulated,
                         testing::Values(Case{Drawn::lognormal, 0, 0}, Case{Drawn::lognormal, 1, 0},
                                         Case{Drawn::lognormal, 3, 0}, Case{Drawn::lognormal, 0, 5},
                                         Case{Drawn::lognormal, 2, 5}, Case{Drawn::weibull, 0, 0},
                                         Case{Drawn::weibull, 1, 0}, Case{Drawn::weibull, 3, 0},
                                         Case{Drawn::weibull, 2, 5}));

TEST(Chance, of_one_kerf_lies_between_the_lognormal_and_the_weibull_of_its_strain) {
    // The design's figures for a lognormal scatter of 16 %: u 0.60 about 0.0007, 0.75 about 0.04, 0.90 about 0.26.
    for (const auto& [u, chance] : {std::pair{0.60, 0.0007}, {0.75, 0.036}, {0.90, 0.255}}) {
        const double z = -std::log(u) / usual_scatter;
        const double lognormal = 0.5 * std::erfc(z / std::sqrt(2.0));
        EXPECT_NEAR(lognormal / chance, 1, 0.05);
        // ln of a Weibull strength: deviation pi/sqrt(6)/shape, mean -gamma/shape under the scale's.
        const double shape = 1.2825498 / usual_scatter;
        const double weibull = -std::expm1(-std::exp(shape * std::log(u) - 0.5772157));
        const double told = chance_of_breaking({{-std::log(u), std::hypot(parts.shop, parts.board), 1}}, parts.spot);
        EXPECT_NEAR(told / std::sqrt(lognormal * weibull), 1, 0.12) << u;
    }
}

TEST(Chance, rises_with_strain_and_with_kerfs_without_a_jump) {
    double before = 0;
    for (int i = 0; i <= 2000; ++i) {
        const double u = 0.3 + i * 0.0005;
        const double here = chance_of_breaking({{-std::log(u), 0.16, 40}, {-std::log(u * 0.93), 0.18, 3}}, parts.spot);
        EXPECT_GE(here, before);
        EXPECT_LT(here - before, 0.003);
        before = here;
        EXPECT_LE(here, chance_of_breaking({{-std::log(u), 0.16, 80}, {-std::log(u * 0.93), 0.18, 3}}, parts.spot));
    }
}

TEST(Chance, comes_back_from_the_strain_that_it_gives) {
    const std::vector<Link> links{{0.3, 0.15, 40}, {0.42, 0.17, 90}};
    const std::vector<double> chances{0.01, 0.05, 0.25, 0.5};
    const std::vector<double> times = times_for_chances(links, 0.05, chances);
    ASSERT_EQ(times.size(), chances.size());
    for (std::size_t i = 0; i < chances.size(); ++i) {
        std::vector<Link> bent = links;
        for (Link& link : bent) link.margin -= std::log(times[i]);
        EXPECT_NEAR(chance_of_breaking(bent, 0.05) / chances[i], 1, 0.02);
    }
}

TEST(Chance, of_any_order_of_kerfs_is_the_same) {
    std::mt19937 random(11);
    std::vector<Link> links;
    links.reserve(60);
    for (int i = 0; i < 60; ++i)
        links.push_back(
            {0.3 + 0.7 * std::uniform_real_distribution<double>()(random), i % 2 == 0 ? 0.15 : 0.11, 1 + i % 3});
    const double chance = chance_of_breaking(links, parts.spot);
    EXPECT_GT(chance, 1e-3);
    for (int round = 0; round < 5; ++round) {
        std::shuffle(links.begin(), links.end(), random);
        EXPECT_NEAR(chance_of_breaking(links, parts.spot), chance, 1e-12);
    }
}

TEST(Chance, is_told_in_seven_steps) {
    EXPECT_EQ(one_in(0), 100);
    EXPECT_EQ(one_in(0.0099), 100);
    EXPECT_EQ(one_in(0.0101), 50);
    EXPECT_EQ(one_in(0.05), 20);
    EXPECT_EQ(one_in(0.1), 10);
    EXPECT_EQ(one_in(0.25), 4);
    EXPECT_EQ(one_in(0.5), 2);
    EXPECT_EQ(one_in(0.51), 1);
}

// Order statistics of the normal distribution, means and deviations of the extreme of 2, 10, 100: Harter, Biometrika 48
// (1961), and tables since, from memory: 0.5642, 1.5388, 2.5076; 0.826, 0.587, 0.429.
TEST(Weakest, is_as_tables_of_order_statistics_have_it) {
    const auto check = [](double count, double mean, double spread) {
        EXPECT_NEAR(weakest_of(count).mean, -mean, 0.03);
        EXPECT_NEAR(weakest_of(count).spread / spread, 1, 0.07);
    };
    check(2, 0.5642, 0.826);
    check(10, 1.5388, 0.587);
    check(100, 2.5076, 0.429);
    EXPECT_NEAR(weakest_of(1).mean, 0, 1e-6);
    EXPECT_EQ(weakest_of(1).spread, 1);
}

TEST(Knowledge, of_any_order_of_readings_is_the_same) {
    Knowledge one, other;
    one.take_trial(Mode::strain, -0.1, 0.03, weakest_of(20));
    one.take_coupon(Mode::peel, 0.05, 0.04, weakest_of(30));
    other.take_coupon(Mode::peel, 0.05, 0.04, weakest_of(30));
    other.take_trial(Mode::strain, -0.1, 0.03, weakest_of(20));
    for (const Mode mode : {Mode::strain, Mode::peel}) {
        EXPECT_NEAR(one.mean(mode), other.mean(mode), 1e-12);
        EXPECT_NEAR(one.spread(mode), other.spread(mode), 1e-12);
    }
}

TEST(Knowledge, grows_with_the_reading_and_never_leaves_a_mode_out) {
    double mean = -1, other = -1;
    for (double ratio = -0.5; ratio <= 0.4; ratio += 0.01) {
        Knowledge known;
        known.take_coupon(Mode::strain, ratio, 0.04, weakest_of(1));
        EXPECT_GT(known.mean(Mode::strain), mean);
        EXPECT_GT(known.mean(Mode::peel), other);
        EXPECT_LE(known.mean(Mode::peel), known.mean(Mode::strain) + 1e-12);
        EXPECT_GT(known.spread(Mode::peel), known.spread(Mode::strain)) << "what was not read is known less";
        mean = known.mean(Mode::strain);
        other = known.mean(Mode::peel);
    }
}

}  // namespace
}  // namespace kerfpacket::bend
