#include "stock/tries.h"

#include <algorithm>
#include <utility>
#include <vector>

#include "stock/wide.h"

namespace kerfpacket::stock {
namespace {

/// What the arithmetic of the relaxation may be off.
constexpr double slack = 1e-4;

/// A plan that is being made: what is still to be cut, which sticks are left, what has been cut.
struct Begun {
    explicit Begun(const Problem& problem) : left(wanted(problem)), sticks(available(problem)) {}

    bool done() const {
        return std::all_of(left.begin(), left.end(), [](int count) { return count == 0; });
    }
    /// Cuts a load, if it is still wanted whole and its stick is there.
    bool take(const Load& load) {
        if (sticks[load.stick] == 0) return false;
        for (std::size_t i = 0; i < left.size(); ++i)
            if (load.of[i] > left[i]) return false;
        for (std::size_t i = 0; i < left.size(); ++i) left[i] -= load.of[i];
        --sticks[load.stick];
        loads.push_back(load.of);
        return true;
    }

    Counts left;
    Counts sticks;
    std::vector<Counts> loads{};
};

/// The stick that holds most by its price; what is free comes first.
std::optional<std::size_t> best_stick(const Problem& problem, const Knapsack& knapsack, const Counts& sticks) {
    std::optional<std::size_t> best;
    for (std::size_t s = 0; s < problem.sticks.size(); ++s) {
        const Wide worth = knapsack.best(problem.sticks[s].room);
        if (sticks[s] == 0 || worth == 0) continue;
        if (!best || worth * problem.sticks[*best].price >
                         Wide{knapsack.best(problem.sticks[*best].room)} * problem.sticks[s].price)
            best = s;
    }
    return best;
}

std::optional<Plan> fill(const Problem& problem, Begun begun, const Prices& prices) {
    while (!begun.done()) {
        Prices of_left = prices;
        for (std::size_t i = 0; i < prices.size(); ++i)
            of_left[i] = begun.left[i] == 0 ? 0 : std::max<std::int64_t>(prices[i], 1);
        const Knapsack knapsack(problem, begun.left, of_left);
        const auto stick = best_stick(problem, knapsack, begun.sticks);
        if (!stick || !begun.take({*stick, knapsack.load(problem.sticks[*stick].room)})) return std::nullopt;
    }
    return on_sticks(problem, std::move(begun.loads));
}

/// What is left of a problem, and where its kinds and sticks stand in the whole.
struct Rest {
    Problem problem;
    std::vector<std::size_t> kinds;
    std::vector<std::size_t> sticks;

    Rest(const Problem& whole, const Begun& begun) {
        for (std::size_t i = 0; i < begun.left.size(); ++i) {
            if (begun.left[i] == 0) continue;
            problem.kinds.push_back({whole.kinds[i].length, begun.left[i]});
            kinds.push_back(i);
        }
        for (std::size_t s = 0; s < begun.sticks.size(); ++s) {
            Stick stick = whole.sticks[s];
            if (!stick.for_sale()) stick.most = begun.sticks[s];
            if (stick.most == 0) continue;
            problem.sticks.push_back(stick);
            sticks.push_back(s);
        }
    }
    Load of_whole(const Load& load, std::size_t all) const {
        Load moved{sticks[load.stick], Counts(all, 0)};
        for (std::size_t i = 0; i < kinds.size(); ++i) moved.of[kinds[i]] = load.of[i];
        return moved;
    }
};

/// Shares, the largest part of a stick first.
std::vector<Share> parts(const Relaxation& relaxation) {
    std::vector<Share> shares = relaxation.shares;
    for (Share& share : shares) share.times -= static_cast<int>(share.times + slack);
    std::stable_sort(shares.begin(), shares.end(), [](const Share& a, const Share& b) { return a.times > b.times; });
    return shares;
}

/// One step down: whole sticks, or one part. False where nothing can be taken.
bool step(Begun& begun, const Rest& rest, const Relaxation& relaxation, std::size_t skip) {
    bool any = false;
    for (const Share& share : relaxation.shares)
        for (int times = static_cast<int>(share.times + slack); times > 0; --times)
            any |= begun.take(rest.of_whole(share.load, begun.left.size()));
    if (any) return true;
    const std::vector<Share> shares = parts(relaxation);
    if (shares.empty()) return false;
    return begun.take(rest.of_whole(shares[std::min(skip, shares.size() - 1)].load, begun.left.size()));
}

}  // namespace

std::optional<Plan> first_fit(const Problem& problem, const Stick& for_sale) {
    std::vector<Units> free;
    for (const Stick& stick : problem.sticks)
        if (!stick.for_sale()) free.insert(free.end(), static_cast<std::size_t>(*stick.most), stick.room);
    std::vector<Counts> loads(free.size(), Counts(problem.kinds.size(), 0));
    for (std::size_t i = 0; i < problem.kinds.size(); ++i) {
        const Units length = problem.kinds[i].length;
        for (int n = 0; n < problem.kinds[i].wanted; ++n) {
            auto at = std::find_if(free.begin(), free.end(), [&](Units room) { return room >= length; });
            if (at == free.end()) {
                if (for_sale.room < length) return std::nullopt;
                at = free.insert(at, for_sale.room);
                loads.emplace_back(problem.kinds.size(), 0);
            }
            *at -= length;
            ++loads[static_cast<std::size_t>(at - free.begin())][i];
        }
    }
    return on_sticks(problem, std::move(loads));
}

std::optional<Plan> filled(const Problem& problem, const Prices& prices) {
    return fill(problem, Begun(problem), prices);
}

std::optional<Plan> rounded(const Problem& problem, const Relaxation& relaxation, double up_from) {
    Begun begun(problem);
    std::vector<Share> shares = relaxation.shares;
    const auto part = [](const Share& share) { return share.times - static_cast<int>(share.times + slack); };
    std::stable_sort(shares.begin(), shares.end(), [&](const Share& a, const Share& b) { return part(a) > part(b); });
    for (const Share& share : shares)
        for (int times = static_cast<int>(share.times + slack) + (part(share) > up_from ? 1 : 0); times > 0; --times)
            if (!begun.take(share.load)) break;
    return fill(problem, std::move(begun), relaxation.prices);
}

std::optional<Plan> dived(const Problem& problem, Cost target, std::size_t skip, std::int64_t& steps) {
    Begun begun(problem);
    while (!begun.done()) {
        const auto so_far = on_sticks(problem, begun.loads);
        const Rest rest(problem, begun);
        if (!so_far) return std::nullopt;
        const Relaxation relaxation = relax(rest.problem, steps, target - so_far->cost + 1);
        if (steps <= 0 || so_far->cost + relaxation.bound > target) return std::nullopt;
        if (!step(begun, rest, relaxation, begun.loads.empty() ? skip : 0)) return std::nullopt;
    }
    auto plan = on_sticks(problem, std::move(begun.loads));
    if (!plan || plan->cost > target) return std::nullopt;
    return plan;
}

}  // namespace kerfpacket::stock
