#include "stock/relaxation.h"

#include <algorithm>
#include <optional>

#include "stock/simplex.h"
#include "stock/wide.h"

namespace kerfpacket::stock {
namespace {

/// Prices of blanks are whole numbers of this part of a price of sticks.
constexpr double scale = 1 << 22;
constexpr double worth_while = 1e-7;

/// What the blanks are worth beyond what the rack can hold of that.
Wide to_be_bought(const Problem& problem, const Prices& prices, const Knapsack& knapsack) {
    Wide worth = 0;
    for (std::size_t i = 0; i < prices.size(); ++i) worth += Wide{prices[i]} * problem.kinds[i].wanted;
    for (const Stick& stick : problem.sticks)
        if (!stick.for_sale()) worth -= Wide{knapsack.best(stick.room)} * *stick.most;
    return worth;
}

/// The bound before it is rounded up: only to choose between prices.
double unrounded(const Problem& problem, const Prices& prices, const Knapsack& knapsack) {
    const auto worth = static_cast<double>(to_be_bought(problem, prices, knapsack));
    double least = std::numeric_limits<double>::max();
    for (const Stick& stick : problem.sticks) {
        const auto best = static_cast<double>(knapsack.best(stick.room));
        if (stick.for_sale() && best > 0) least = std::min(least, worth * static_cast<double>(stick.price) / best);
    }
    return least;
}

/// The load by which most is gained, if any gains.
std::optional<Load> entering(const Problem& problem, const Simplex& simplex, const Knapsack& knapsack) {
    std::optional<std::size_t> most;
    double gain = 0;
    for (std::size_t s = 0; s < problem.sticks.size(); ++s) {
        const double price = static_cast<double>(problem.sticks[s].price) + simplex.of_stick(s);
        const double gained = static_cast<double>(knapsack.best(problem.sticks[s].room)) / scale - price;
        if (gained <= worth_while * (1 + price) || (most && gained <= gain)) continue;
        most = s;
        gain = gained;
    }
    if (!most) return std::nullopt;
    return Load{*most, knapsack.load(problem.sticks[*most].room)};
}

}  // namespace

Cost proved_bound(const Problem& problem, const Prices& prices, const Knapsack& knapsack) {
    const Wide worth = to_be_bought(problem, prices, knapsack);
    if (worth <= 0) return 0;
    std::optional<Cost> least;
    for (const Stick& stick : problem.sticks) {
        const Wide best = knapsack.best(stick.room);
        if (!stick.for_sale() || best == 0) continue;
        const auto bound = static_cast<Cost>((worth * stick.price + best - 1) / best);
        least = std::min(least.value_or(bound), bound);
    }
    return least.value_or(0);
}

Relaxation relax(const Problem& problem, std::int64_t& steps, Cost enough) {
    Simplex simplex(problem);
    const Counts most = wanted(problem);
    Relaxation result;
    double highest = -1;
    while (simplex.price()) {
        Prices prices;
        for (std::size_t i = 0; i < problem.kinds.size(); ++i)
            prices.push_back(static_cast<std::int64_t>(std::max(0.0, simplex.of_kind(i)) * scale));
        const Knapsack knapsack(problem, most, prices);
        steps -= knapsack.work();
        result.bound = std::max(result.bound, proved_bound(problem, prices, knapsack));
        const double bound = unrounded(problem, prices, knapsack);
        const auto load = entering(problem, simplex, knapsack);
        if (bound > highest || result.prices.empty()) {
            highest = bound;
            result.prices = prices;
        }
        if (result.bound >= enough || steps <= 0 || !load || !simplex.bring_in(*load)) break;
    }
    if (result.prices.empty()) result.prices.assign(problem.kinds.size(), 1);
    simplex.each([&](const Load& load, double times) {
        if (times > worth_while * 100) result.shares.push_back({load, times});
    });
    return result;
}

}  // namespace kerfpacket::stock
