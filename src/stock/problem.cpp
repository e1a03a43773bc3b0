#include "stock/problem.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <utility>

#include "measure/require.h"

namespace kerfpacket::stock {
namespace {

/// Whether a stick for sale is of no use beside those after it in a row that is sorted by room.
bool outdone(const Stick& stick, std::optional<Cost> cheapest_longer) {
    return stick.for_sale() && cheapest_longer && *cheapest_longer <= stick.price;
}

/// The places of the sticks that may be of use, shortest first, of one room what the rack holds first.
std::vector<std::size_t> of_use(const std::vector<Stick>& sticks) {
    std::vector<std::size_t> order(sticks.size());
    std::iota(order.begin(), order.end(), 0U);
    const auto key = [&](std::size_t i) {
        const Stick& stick = sticks[i];
        return std::tuple(stick.room, stick.for_sale(), -stick.price, i);
    };
    std::sort(order.begin(), order.end(), [&](std::size_t a, std::size_t b) { return key(a) < key(b); });
    std::vector<std::size_t> kept;
    std::optional<Cost> cheapest;
    for (auto at = order.rbegin(); at != order.rend(); ++at) {
        const Stick& stick = sticks[*at];
        if (outdone(stick, cheapest)) continue;
        if (stick.for_sale()) cheapest = stick.price;
        kept.push_back(*at);
    }
    std::reverse(kept.begin(), kept.end());
    return kept;
}

void divide_prices(Prepared& prepared) {
    Cost divisor = 0;
    for (const Stick& stick : prepared.problem.sticks) divisor = std::gcd(divisor, stick.price);
    if (divisor == 0) return;
    for (Stick& stick : prepared.problem.sticks) stick.price /= divisor;
    prepared.divisor = divisor;
}

/// Where nothing for sale holds the longest blank, a stick that does, so dear that no plan takes it that can do
/// without.
void make_up(Prepared& prepared, std::size_t name) {
    Problem& problem = prepared.problem;
    const Units longest = problem.kinds.front().length;
    Cost dearest = 1;
    Cost pieces = 1;
    for (const Stick& stick : problem.sticks) {
        if (stick.for_sale() && stick.room >= longest) return;
        dearest = std::max(dearest, stick.price);
    }
    for (const Kind& kind : problem.kinds) pieces += kind.wanted;
    prepared.made_up = problem.sticks.size();
    problem.sticks.push_back({std::max(longest, longest_room(problem)), dearest * pieces});
    prepared.stick_of.push_back(name);
}

}  // namespace

Units weight(const Problem& problem, const Counts& load) {
    Units sum = 0;
    for (std::size_t i = 0; i < load.size(); ++i) sum += problem.kinds[i].length * load[i];
    return sum;
}

Units longest_room(const Problem& problem) {
    Units longest = 0;
    for (const Stick& stick : problem.sticks) longest = std::max(longest, stick.room);
    return longest;
}

Counts wanted(const Problem& problem) {
    Counts counts;
    for (const Kind& kind : problem.kinds) counts.push_back(kind.wanted);
    return counts;
}

Counts available(const Problem& problem) {
    const Counts blanks = wanted(problem);
    const int all = std::accumulate(blanks.begin(), blanks.end(), 0);
    Counts counts;
    for (const Stick& stick : problem.sticks) counts.push_back(stick.most.value_or(all));
    return counts;
}

Prepared prepared(const Problem& problem) {
    Prepared result;
    std::map<Units, int, std::greater<>> kinds;
    for (const Kind& kind : problem.kinds) {
        measure::require(kind.length > 0 && kind.wanted > 0, "a blank has a length and is wanted");
        kinds[kind.length] += kind.wanted;
    }
    measure::require(!kinds.empty(), "something is to be cut");
    for (const auto& [length, count] : kinds) result.problem.kinds.push_back({length, count});
    for (const std::size_t at : of_use(problem.sticks)) {
        const Stick& stick = problem.sticks[at];
        measure::require(stick.for_sale() ? stick.price > 0 : stick.price == 0, "only the rack is free");
        if (stick.room < result.problem.kinds.back().length) continue;
        result.problem.sticks.push_back(stick);
        result.stick_of.push_back(at);
    }
    divide_prices(result);
    make_up(result, problem.sticks.size());
    return result;
}

std::optional<Plan> on_sticks(const Problem& problem, std::vector<Counts> loads) {
    std::vector<std::pair<Units, Counts>> heaviest_first;
    for (Counts& load : loads)
        if (const Units units = weight(problem, load); units > 0) heaviest_first.emplace_back(units, std::move(load));
    std::sort(heaviest_first.begin(), heaviest_first.end(), std::greater<>());
    Counts left = available(problem);
    Plan plan;
    for (auto& [units, load] : heaviest_first) {
        std::optional<std::size_t> taken;
        for (std::size_t s = 0; s < problem.sticks.size(); ++s) {
            if (problem.sticks[s].room < units || left[s] == 0) continue;
            if (!taken || problem.sticks[s].price < problem.sticks[*taken].price) taken = s;
        }
        if (!taken) return std::nullopt;
        --left[*taken];
        plan.cost += problem.sticks[*taken].price;
        plan.loads.push_back({*taken, std::move(load)});
    }
    return plan;
}

}  // namespace kerfpacket::stock
