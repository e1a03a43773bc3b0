// Sticks are counted again from the plan, against published counts and against another method by another hand.

#include "stock/pack.h"

#include <gtest/gtest.h>
#include <sys/resource.h>

#include <algorithm>
#include <fstream>
#include <limits>
#include <map>
#include <numeric>
#include <sstream>

#include "stock/relaxation.h"

namespace kerfpacket::stock {
namespace {

/// The same numbers on every machine: splitmix64 (S. Vigna, public domain; from memory).
class Numbers {
public:
    explicit Numbers(std::uint64_t seed) : state_(seed) {}
    std::int64_t between(std::int64_t least, std::int64_t most) {
        std::uint64_t mixed = (state_ += 0x9e3779b97f4a7c15ULL);
        mixed = (mixed ^ (mixed >> 30)) * 0xbf58476d1ce4e5b9ULL;
        mixed = (mixed ^ (mixed >> 27)) * 0x94d049bb133111ebULL;
        mixed ^= mixed >> 31;
        return least + static_cast<std::int64_t>(mixed % static_cast<std::uint64_t>(most - least + 1));
    }

private:
    std::uint64_t state_;
};

/// Counts a plan again; its cost is the answer.
Cost counted(const Problem& problem, const Packing& packing) {
    std::vector<int> pieces(problem.kinds.size(), 0);
    std::vector<int> used(problem.sticks.size(), 0);
    Cost cost = 0;
    for (const Packed& packed : packing.sticks) {
        Units cut = 0;
        for (const std::size_t piece : packed.pieces) {
            cut += problem.kinds[piece].length;
            ++pieces[piece];
        }
        const Stick& stick = problem.sticks[packed.stick];
        EXPECT_LE(cut, stick.room);
        EXPECT_GT(cut, 0);
        cost += stick.price;
        if (++used[packed.stick]; stick.most) { EXPECT_LE(used[packed.stick], *stick.most); }
    }
    for (const std::size_t piece : packing.left_over) ++pieces[piece];
    for (std::size_t i = 0; i < pieces.size(); ++i) EXPECT_EQ(pieces[i], problem.kinds[i].wanted);
    EXPECT_EQ(cost, packing.cost);
    EXPECT_LE(packing.bound, packing.cost);
    return cost;
}

// OR-Library, binpack1: see README.md beside this file.
TEST(Pack, PublishedInstancesTakeThePublishedCount) {
    std::ifstream file(std::string(KERFPACKET_SOURCE_DIR) + "/tests/unit/stock/u120.txt");
    int instances = 0;
    for (std::string line; std::getline(file, line); ++instances) {
        std::istringstream numbers(line);
        Cost least = 0;
        numbers >> least;
        Problem problem{{{150, 1}}, {}};
        for (Units length = 0; numbers >> length;) problem.kinds.push_back({length, 1});
        ASSERT_EQ(problem.kinds.size(), 120U);
        const Packing packing = pack(problem);
        EXPECT_EQ(counted(problem, packing), least) << "instance " << instances;
        EXPECT_TRUE(packing.proved()) << "instance " << instances << ", bound " << packing.bound;
    }
    EXPECT_EQ(instances, 20);
}

// As the OR-Library says of its class of triplets: lengths are made three by three to fill a stick without waste, so
// that the least count is known. The numbers are ours.
TEST(Pack, TripletsFillEveryStick) {
    for (std::uint64_t seed = 0; seed < 20; ++seed) {
        Numbers numbers(70 + seed);
        Problem problem{{{1000, 1}}, {}};
        for (int stick = 0; stick < 20; ++stick) {
            const Units first = numbers.between(380, 490);
            const Units second = numbers.between(250, (1000 - first) / 2);
            for (const Units length : {first, second, 1000 - first - second}) problem.kinds.push_back({length, 1});
        }
        const Packing packing = pack(problem);
        EXPECT_EQ(counted(problem, packing), 20) << "seed " << seed;
        EXPECT_TRUE(packing.proved()) << "seed " << seed;
    }
}

/// The least cost by another way: every set of blanks, the last stick of each set in turn. The rack is spread out
/// into single sticks that are used or not.
class BySets {
public:
    explicit BySets(const Problem& problem) {
        for (const Kind& kind : problem.kinds)
            lengths_.insert(lengths_.end(), static_cast<std::size_t>(kind.wanted), kind.length);
        const std::size_t sets = std::size_t{1} << lengths_.size();
        least_.assign(sets, never);
        least_[0] = 0;
        for (const Stick& stick : problem.sticks)
            for (int n = 0; n < stick.most.value_or(0); ++n) use_once(stick);
        buy(problem.sticks);
    }
    Cost least() const { return least_.back(); }

private:
    static constexpr Cost never = 1'000'000'000'000;

    Units length_of(std::size_t set) const {
        Units sum = 0;
        for (std::size_t i = 0; i < lengths_.size(); ++i)
            if ((set >> i & 1U) != 0) sum += lengths_[i];
        return sum;
    }
    void use_once(const Stick& stick) {
        const std::vector<Cost> before = least_;
        for (std::size_t set = 1; set < least_.size(); ++set)
            for (std::size_t part = set; part != 0; part = (part - 1) & set)
                if (length_of(part) <= stick.room) least_[set] = std::min(least_[set], before[set ^ part]);
    }
    void buy(const std::vector<Stick>& sticks) {
        std::vector<Cost> cost(least_.size(), never);
        for (std::size_t set = 1; set < least_.size(); ++set)
            for (const Stick& stick : sticks)
                if (!stick.most && length_of(set) <= stick.room) cost[set] = std::min(cost[set], stick.price);
        for (std::size_t set = 1; set < least_.size(); ++set)
            for (std::size_t part = set; part != 0; part = (part - 1) & set)
                least_[set] = std::min(least_[set], least_[set ^ part] + cost[part]);
    }

    std::vector<Units> lengths_;
    std::vector<Cost> least_;
};

/// A few blanks, mixed lengths of stock, in cents or by the length, some with a rack.
Problem small_job(std::uint64_t seed) {
    Numbers numbers(9000 + seed);
    Problem problem;
    const bool cents = seed % 2 == 1;
    const bool racks = seed % 3 == 2;
    const std::int64_t lengths = numbers.between(1, 4);
    for (std::int64_t i = 0; i < lengths; ++i) {
        const std::int64_t feet = std::vector<std::int64_t>{16, 8, 12, 10}[static_cast<std::size_t>(i)];
        problem.sticks.push_back({feet * 96 - 8 + 1, cents ? numbers.between(80, 160) * feet : feet});
    }
    for (int i = 0; racks && i < 2; ++i)
        problem.sticks.push_back({numbers.between(150, 1200), 0, static_cast<int>(numbers.between(1, 2))});
    const std::int64_t blanks = numbers.between(3, racks ? 9 : 11);
    for (std::int64_t i = 0; i < blanks; ++i) problem.kinds.push_back({numbers.between(96, 1480), 1});
    return problem;
}

TEST(Pack, SmallJobsCostWhatEverySetOfBlanksSays) {
    int proved = 0;
    for (std::uint64_t seed = 0; seed < 600; ++seed) {
        const Problem problem = small_job(seed);
        const Packing packing = pack(problem);
        ASSERT_TRUE(packing.left_over.empty());
        EXPECT_EQ(counted(problem, packing), BySets(problem).least()) << "seed " << seed;
        proved += packing.proved() ? 1 : 0;
    }
    EXPECT_EQ(proved, 600);
}

/// Pieces by length, stick by stick: what a plan says without the names.
std::vector<std::vector<Units>> read(const Problem& problem, const Packing& packing) {
    std::vector<std::vector<Units>> sticks;
    for (const Packed& packed : packing.sticks) {
        sticks.push_back({problem.sticks[packed.stick].room});
        for (const std::size_t piece : packed.pieces) sticks.back().push_back(problem.kinds[piece].length);
    }
    return sticks;
}

TEST(Pack, TheOrderOfTheJobDoesNotMatter) {
    for (std::uint64_t seed = 0; seed < 60; ++seed) {
        const Problem problem = small_job(seed);
        Problem turned = problem;
        std::reverse(turned.kinds.begin(), turned.kinds.end());
        std::rotate(turned.sticks.begin(), turned.sticks.begin() + 1, turned.sticks.end());
        EXPECT_EQ(read(problem, pack(problem)), read(turned, pack(turned))) << "seed " << seed;
    }
}

/// What a house may want: made up, lengths of liners, bases and legs in 64ths of an inch.
Problem house(std::uint64_t seed, int blanks, bool cents) {
    Numbers numbers(seed);
    Problem problem;
    for (const std::int64_t feet : {8, 12, 16})
        problem.sticks.push_back({feet * 768 - 64 + 8, cents ? numbers.between(95, 140) * feet : feet});
    for (int i = 0; i < blanks; ++i) problem.kinds.push_back({numbers.between(20 * 64, 180 * 64), 1});
    return problem;
}

TEST(Pack, HousesAreProvedInFeetAndNearlyInCents) {
    for (const int blanks : {5, 20, 60}) {
        const Problem in_feet = house(100 + static_cast<std::uint64_t>(blanks), blanks, false);
        const Packing by_length = pack(in_feet);
        counted(in_feet, by_length);
        EXPECT_TRUE(by_length.proved()) << blanks;
        const Problem in_cents = house(100 + static_cast<std::uint64_t>(blanks), blanks, true);
        const Packing by_price = pack(in_cents);
        counted(in_cents, by_price);
        EXPECT_LE(by_price.cost - by_price.bound, by_price.cost / 100) << blanks;
    }
}

TEST(Pack, TheRackComesFirstAndOnlyAsOftenAsItLiesThere) {
    const Problem problem{{{100, 0, 1}, {100, 700}}, {{50, 3}}};
    const Packing packing = pack(problem);
    EXPECT_EQ(counted(problem, packing), 700);
    EXPECT_EQ(packing.sticks.size(), 2U);
    EXPECT_TRUE(packing.proved());
}

TEST(Pack, WhatNothingHoldsIsLeftOver) {
    const Problem problem{{{100, 0, 1}, {40, 5}}, {{90, 2}, {30, 1}}};
    const Packing packing = pack(problem);
    counted(problem, packing);
    EXPECT_EQ(packing.left_over, std::vector<std::size_t>{0});
    EXPECT_EQ(packing.cost, 5);
}

// 40 + 40 + 20 fill one stick, and leave of the other the longest offcut there is.
TEST(Pack, OffcutsAreGathered) {
    const Problem problem{{{100, 1}}, {{60, 1}, {40, 1}, {30, 1}, {20, 1}}};
    const Packing packing = pack(problem);
    ASSERT_EQ(packing.sticks.size(), 2U);
    const auto read_back = read(problem, packing);
    EXPECT_EQ(read_back[0], (std::vector<Units>{100, 60, 40}));
    EXPECT_EQ(read_back[1], (std::vector<Units>{100, 30, 20}));
}

TEST(Pack, OfTwoAtOnePriceTheLongerIsBought) {
    const Problem problem{{{80, 5}, {100, 5}}, {{80, 1}}};
    EXPECT_EQ(pack(problem).sticks.front().stick, 1U);
}

/// What no plan undercuts by length alone, by this test's own hand: all blanks end to end, at the cheapest length.
Cost by_length(const Problem& problem) {
    Units all = 0;
    for (const Kind& kind : problem.kinds) all += kind.length * kind.wanted;
    double cheapest = 1e9;
    for (const Stick& stick : problem.sticks)
        cheapest = std::min(cheapest, static_cast<double>(stick.price) / static_cast<double>(stick.room));
    return static_cast<Cost>(static_cast<double>(all) * cheapest);
}

TEST(Pack, MoreKindsThanAreSearchedHaveAPlanAndABoundAllTheSame) {
    for (const int blanks : {130, 500}) {
        for (const bool cents : {false, true}) {
            const Problem problem = house(900 + static_cast<std::uint64_t>(blanks), blanks, cents);
            ASSERT_GT(problem.kinds.size(), most_searched);
            const Packing packing = pack(problem);
            EXPECT_EQ(counted(problem, packing), packing.cost);
            EXPECT_TRUE(packing.left_over.empty());
            EXPECT_GE(packing.bound, by_length(problem)) << blanks;
            EXPECT_LE(packing.cost, packing.bound * 103 / 100) << blanks << ", bound " << packing.bound;
            if (blanks > 200) continue;
            Problem turned = problem;
            std::reverse(turned.kinds.begin(), turned.kinds.end());
            EXPECT_EQ(read(problem, packing), read(turned, pack(turned))) << blanks;
        }
    }
}

/// Ribs, plies and short legs, the price of each length of stock in cents.
Problem short_blanks(std::uint64_t seed, int blanks) {
    Numbers numbers(seed);
    Problem problem;
    for (const std::int64_t feet : {8, 10, 12})
        problem.sticks.push_back({feet * 768 - 16, numbers.between(165, 190) * feet});
    for (int i = 0; i < blanks; ++i) problem.kinds.push_back({numbers.between(5 * 64, 24 * 64), 1});
    return problem;
}

/// The most memory that this process has held so far, in MB.
long most_memory() {
    rusage usage{};
    EXPECT_EQ(getrusage(RUSAGE_SELF, &usage), 0);
    return usage.ru_maxrss / 1024;
}

// A stick holds millions of loads of these: all of them listed took 900 MB, and found no plan as good.
TEST(Pack, ManyShortBlanksAreProvedWithoutAListOfAllTheirLoads) {
    const long before = most_memory();
    for (const int blanks : {40, 60, 80}) {
        const Problem problem = short_blanks(500 + static_cast<std::uint64_t>(blanks), blanks);
        const Packing packing = pack(problem);
        counted(problem, packing);
        EXPECT_TRUE(packing.proved()) << blanks << " blanks: " << packing.cost << ", bound " << packing.bound;
        EXPECT_GE(packing.bound, by_length(problem)) << blanks;
    }
    EXPECT_LT(most_memory() - before, 200);
}

TEST(Relax, ABoundHoldsWhereverItsStepsEnd) {
    const Problem problem = prepared(short_blanks(31, 30)).problem;
    std::int64_t no_end = std::numeric_limits<std::int64_t>::max();
    const Cost highest = relax(problem, no_end).bound;
    Cost before = 0;
    for (const std::int64_t limit : {1, 1000, 30000, 300000}) {
        std::int64_t steps = limit;
        const Cost bound = relax(problem, steps).bound;
        EXPECT_GE(bound, before) << limit;
        EXPECT_LE(bound, highest) << limit;
        EXPECT_LT(steps, limit);
        before = bound;
    }
    EXPECT_GT(before, by_length(problem) * 9 / 10);
}

TEST(Pack, AnEffortOfNothingStillTellsABound) {
    const Problem problem = house(260, 60, true);
    const Packing packing = pack(problem, 0);
    counted(problem, packing);
    EXPECT_GT(packing.bound, packing.cost * 9 / 10);
}

}  // namespace
}  // namespace kerfpacket::stock
