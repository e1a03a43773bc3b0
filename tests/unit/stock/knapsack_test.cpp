// What one stick holds, against every load there is, by this test's own hand.

#include "stock/knapsack.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <random>

namespace kerfpacket::stock {
namespace {

std::int64_t worth(const Prices& prices, const Counts& load) {
    std::int64_t sum = 0;
    for (std::size_t i = 0; i < load.size(); ++i) sum += prices[i] * load[i];
    return sum;
}

/// Every load, one after the other: the best of each weight.
class ByHand {
public:
    ByHand(const Problem& problem, const Counts& most, const Prices& prices)
        : problem_(problem), most_(most), prices_(prices), load_(most.size(), 0) {
        best_.assign(static_cast<std::size_t>(longest_room(problem)) + 1, 0);
        go(0);
        for (std::size_t room = 1; room < best_.size(); ++room) best_[room] = std::max(best_[room], best_[room - 1]);
    }
    std::int64_t best(Units room) const { return best_[static_cast<std::size_t>(room)]; }

private:
    void go(std::size_t kind) {
        const Units units = weight(problem_, load_);
        if (units > longest_room(problem_)) return;
        if (kind == load_.size()) {
            auto& best = best_[static_cast<std::size_t>(units)];
            best = std::max(best, worth(prices_, load_));
            return;
        }
        for (load_[kind] = 0; load_[kind] < most_[kind]; ++load_[kind]) go(kind + 1);
        go(kind + 1);
        load_[kind] = 0;
    }

    const Problem& problem_;
    const Counts& most_;
    const Prices& prices_;
    Counts load_;
    std::vector<std::int64_t> best_{};
};

// A room of 40 is soon a table, one of 4000 hardly ever: see knapsack.cpp. Prices below 9 tie often.
TEST(Knapsack, HoldsInEveryRoomWhatTheBestOfAllLoadsIsWorth) {
    std::mt19937 numbers(20);
    const auto between = [&](unsigned least, unsigned most) {
        return static_cast<std::int64_t>(least + numbers() % (most - least + 1));
    };
    for (int round = 0; round < 200; ++round) {
        const unsigned room = std::vector<unsigned>{40, 300, 4000}[static_cast<std::size_t>(round) % 3];
        Problem problem{{{room, 1}}, {}};
        Counts most;
        Prices prices;
        for (std::int64_t i = between(1, 6); i > 0; --i) {
            problem.kinds.push_back({between(room / 20, room / 2), 1});
            most.push_back(static_cast<int>(between(0, 5)));
            prices.push_back(between(0, round % 2 == 0 ? 8 : 9000000));
        }
        const Knapsack knapsack(problem, most, prices);
        const ByHand by_hand(problem, most, prices);
        for (Units at = 0; at <= static_cast<Units>(room); ++at) {
            ASSERT_EQ(knapsack.best(at), by_hand.best(at)) << "round " << round << ", room " << at;
            const Counts load = knapsack.load(at);
            ASSERT_EQ(worth(prices, load), by_hand.best(at)) << "round " << round << ", room " << at;
            ASSERT_LE(weight(problem, load), at) << "round " << round;
            for (std::size_t i = 0; i < load.size(); ++i) ASSERT_LE(load[i], most[i]) << "round " << round;
        }
    }
}

// One each of 10 and 20 or one of 30, all worth 3 in 30: the one that comes first is kept, so that plans stay as they
// are.
TEST(Knapsack, OfLoadsWorthTheSameTheOneWithTheEarlierKindsIsKept) {
    for (const Units room : {Units{30}, Units{3000}}) {
        const Problem problem{{{room, 1}}, {{room, 1}, {room * 2 / 3, 1}, {room / 3, 1}}};
        EXPECT_EQ(Knapsack(problem, {1, 1, 1}, {3, 2, 1}).load(room), (Counts{1, 0, 0}));
    }
}

}  // namespace
}  // namespace kerfpacket::stock
