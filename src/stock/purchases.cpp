#include "stock/purchases.h"

#include <algorithm>
#include <numeric>
#include <utility>

#include "stock/tries.h"

namespace kerfpacket::stock {
namespace {

constexpr std::size_t most_purchases = 5000;
constexpr int most_looks = 2000000;

std::vector<std::size_t> for_sale(const Problem& problem) {
    std::vector<std::size_t> places;
    for (std::size_t s = 0; s < problem.sticks.size(); ++s)
        if (problem.sticks[s].for_sale()) places.push_back(s);
    return places;
}

/// Rows of small whole numbers that do not fall, without a common divisor.
void add_weights(std::vector<std::vector<Cost>>& all, std::vector<Cost>& weights, std::size_t sticks, Cost most) {
    if (weights.size() == sticks) {
        Cost divisor = 0;
        for (const Cost weight : weights) divisor = std::gcd(divisor, weight);
        if (divisor == 1) all.push_back(weights);
        return;
    }
    for (Cost weight = weights.empty() ? 0 : weights.back(); weight <= most; ++weight) {
        weights.push_back(weight);
        add_weights(all, weights, sticks, most);
        weights.pop_back();
    }
}

/// Fewer kinds of sticks leave room for larger weights.
Cost most_weight(std::size_t sticks) {
    if (sticks <= 3) return 5;
    return sticks == 4 ? 4 : sticks <= 6 ? 2 : 1;
}

/// The plan for one set of weights, at the prices of the problem.
std::optional<Plan> at_prices(const Problem& problem, std::optional<Plan> plan) {
    if (!plan) return std::nullopt;
    std::vector<Counts> loads;
    for (Load& load : plan->loads) loads.push_back(std::move(load.of));
    return on_sticks(problem, std::move(loads));
}

class Listing {
public:
    Listing(const Problem& problem, const std::vector<Cut>& cuts, Cost least, Cost below)
        : problem_(problem), cuts_(cuts), least_(least), below_(below), sticks_(available(problem)) {
        for (const std::size_t s : for_sale(problem)) sticks_[s] = 0;
    }

    std::optional<std::vector<Purchase>> run() {
        go(0, 0);
        if (looks_ > most_looks || found_.size() > most_purchases) return std::nullopt;
        std::sort(found_.begin(), found_.end(), [](const Purchase& a, const Purchase& b) {
            return std::pair(a.cost, a.sticks) < std::pair(b.cost, b.sticks);
        });
        return std::move(found_);
    }

private:
    void go(std::size_t s, Cost cost) {
        if (++looks_ > most_looks || found_.size() > most_purchases) return;
        if (s == sticks_.size()) {
            if (cost >= least_ && allowed()) found_.push_back({cost, sticks_});
            return;
        }
        const Stick& stick = problem_.sticks[s];
        if (!stick.for_sale()) return go(s + 1, cost);
        for (; cost < below_; cost += stick.price, ++sticks_[s]) go(s + 1, cost);
        sticks_[s] = 0;
    }

    bool allowed() const {
        return std::all_of(cuts_.begin(), cuts_.end(), [&](const Cut& cut) {
            Cost sum = 0;
            for (std::size_t s = 0; s < sticks_.size(); ++s) sum += cut.weights[s] * sticks_[s];
            return sum >= cut.least;
        });
    }

    const Problem& problem_;
    const std::vector<Cut>& cuts_;
    Cost least_;
    Cost below_;
    Counts sticks_;
    std::vector<Purchase> found_{};
    int looks_ = 0;
};

}  // namespace

Cuts cuts_of(const Problem& problem, std::int64_t& steps) {
    const std::vector<std::size_t> places = for_sale(problem);
    std::vector<std::vector<Cost>> all;
    std::vector<Cost> weights;
    add_weights(all, weights, places.size(), most_weight(places.size()));
    Cuts result;
    for (const std::vector<Cost>& of_sale : all) {
        if (steps <= 0) break;
        Problem weighed = problem;
        Cut cut{std::vector<Cost>(problem.sticks.size(), 0), 0};
        for (std::size_t i = 0; i < places.size(); ++i)
            weighed.sticks[places[i]].price = cut.weights[places[i]] = of_sale[i];
        cut.least = relax(weighed, steps).bound;
        // Where the shortest costs nothing, the plan would be of it alone.
        for (std::size_t skip = 0; skip < 2 && of_sale.front() > 0; ++skip)
            if (auto plan = at_prices(problem, dived(weighed, cut.least + 1, skip, steps)))
                result.plans.push_back(*plan);
        result.cuts.push_back(std::move(cut));
    }
    return result;
}

std::optional<std::vector<Purchase>> purchases(const Problem& problem, const std::vector<Cut>& cuts, Cost least,
                                               Cost below) {
    return Listing(problem, cuts, least, below).run();
}

}  // namespace kerfpacket::stock
