#include "stock/pack.h"

#include <algorithm>
#include <limits>
#include <map>
#include <optional>
#include <utility>

#include "measure/require.h"
#include "stock/fit.h"
#include "stock/purchases.h"
#include "stock/tidy.h"
#include "stock/tries.h"

namespace kerfpacket::stock {
namespace {

/// What quick tries and bounds on purchases may do together, in steps of a knapsack: many short blanks, on sticks
/// priced in cents, would take them minutes.
constexpr std::int64_t most_of_tries = 30000000;

/// The best plan so far and what no plan undercuts.
class Best {
public:
    explicit Best(Cost bound) : bound_(bound) {}

    void take(std::optional<Plan> plan) {
        const auto key = [](const Plan& of) { return std::pair(of.cost, of.loads.size()); };
        if (plan && (!plan_ || key(*plan) < key(*plan_))) plan_ = std::move(plan);
    }
    void raise(Cost bound) { bound_ = std::max(bound_, std::min(bound, cost())); }
    Cost cost() const { return plan_->cost; }
    Cost bound() const { return bound_; }
    bool proved() const { return plan_->cost <= bound_; }
    const Plan& plan() const { return *plan_; }

private:
    std::optional<Plan> plan_;
    Cost bound_;
};

Relaxation relax_wholly(const Problem& problem) {
    std::int64_t no_end = std::numeric_limits<std::int64_t>::max();
    return relax(problem, no_end);
}

bool has_many(const Problem& problem) { return problem.kinds.size() > most_searched; }

/// Very many kinds, a few neighbours in length taken for one: all of them as long as the longest, so that a plan of
/// these is one of the blanks themselves, or as the shortest, so that no plan of the blanks undercuts the bound of
/// these. After Fernandez de la Vega and Lueker, "Bin packing can be solved within 1 + e in linear time", Combinatorica
/// 1 (1981).
class Coarse {
public:
    explicit Coarse(const Problem& problem) : problem_(problem) {
        constexpr std::size_t most = 100;
        step_ = (problem.kinds.size() + most - 1) / most;
    }

    Cost bound() const { return relax_wholly(of(false)).bound; }

    std::optional<Plan> plan() const {
        const Packing packing = pack(of(true), usual_effort / 20);
        if (!packing.left_over.empty()) return std::nullopt;
        Counts left = wanted(problem_);
        std::vector<Counts> loads;
        for (const Packed& packed : packing.sticks) {
            Counts& load = loads.emplace_back(left.size(), 0);
            for (const std::size_t group : packed.pieces) {
                std::size_t i = group * step_;
                while (left.at(i) == 0) ++i;
                --left[i];
                ++load[i];
            }
        }
        return on_sticks(problem_, std::move(loads));
    }

private:
    Problem of(bool longest) const {
        Problem coarse{problem_.sticks, {}};
        for (std::size_t i = 0; i < problem_.kinds.size(); ++i) {
            if (i % step_ == 0) coarse.kinds.push_back({problem_.kinds[i].length, 0});
            Kind& kind = coarse.kinds.back();
            kind.wanted += problem_.kinds[i].wanted;
            if (!longest) kind.length = problem_.kinds[i].length;
        }
        return coarse;
    }

    const Problem& problem_;
    std::size_t step_ = 1;
};

void try_first_fit(Best& best, const Problem& problem) {
    for (const Stick& stick : problem.sticks)
        if (stick.for_sale()) best.take(first_fit(problem, stick));
}

void try_quickly(Best& best, const Problem& problem, const Relaxation& relaxation, std::int64_t& steps) {
    best.take(filled(problem, relaxation.prices));
    for (const double up_from : {1.0, 0.5, 0.3}) best.take(rounded(problem, relaxation, up_from));
    for (std::size_t skip = 0; skip < 12 && !best.proved(); ++skip)
        best.take(dived(problem, skip < 2 ? best.cost() - 1 : best.bound(), skip, steps));
}

/// Every purchase that could be cheaper, the cheapest first: the first into which the blanks go is the least.
void search(Best& best, const Problem& problem, const Prices& prices, std::int64_t& tries, std::int64_t steps) {
    Cuts cuts = cuts_of(problem, tries);
    for (Plan& plan : cuts.plans) best.take(std::move(plan));
    const auto possible = purchases(problem, cuts.cuts, best.bound(), best.cost());
    if (!possible) return;
    bool known = true;  // that none of those before will do
    for (const Purchase& purchase : *possible) {
        if (known) best.raise(purchase.cost);
        Fitted fitted = fit(problem, purchase.sticks, prices, steps);
        if (fitted.answer == Fits::not_known && steps <= 0) return;
        known &= fitted.answer != Fits::not_known;
        if (fitted.answer != Fits::yes) continue;
        std::vector<Counts> loads;
        for (Load& load : fitted.loads) loads.push_back(std::move(load.of));
        best.take(on_sticks(problem, std::move(loads)));
        break;
    }
    if (known) best.raise(best.cost());
}

/// Which of the kinds that were given a piece of a length is, dealt out in their order.
class Deal {
public:
    explicit Deal(const Problem& problem) {
        for (std::size_t i = problem.kinds.size(); i-- > 0;) {
            auto& pieces = pieces_[problem.kinds[i].length];
            pieces.insert(pieces.end(), static_cast<std::size_t>(problem.kinds[i].wanted), i);
        }
    }
    std::size_t next(Units length) {
        auto& pieces = pieces_.at(length);
        const std::size_t piece = pieces.back();
        pieces.pop_back();
        return piece;
    }
    bool done() const {
        return std::all_of(pieces_.begin(), pieces_.end(), [](const auto& of) { return of.second.empty(); });
    }

private:
    std::map<Units, std::vector<std::size_t>> pieces_;  ///< the next one last
};

/// Counted again from the plan alone: every blank once, no stick overfull, no more of the rack than there is.
void require_counted(const Problem& problem, const Packing& packing) {
    Counts left = wanted(problem);
    for (const std::size_t piece : packing.left_over) --left.at(piece);
    Counts used(problem.sticks.size(), 0);
    for (const Packed& packed : packing.sticks) {
        Units room = problem.sticks.at(packed.stick).room;
        for (const std::size_t piece : packed.pieces) {
            room -= problem.kinds.at(piece).length;
            --left[piece];
        }
        measure::require(room >= 0 && !packed.pieces.empty(), "a stick holds what is cut from it");
        ++used[packed.stick];
    }
    for (const int count : left) measure::require(count == 0, "every blank is cut once");
    for (std::size_t s = 0; s < used.size(); ++s)
        measure::require(used[s] <= problem.sticks[s].most.value_or(used[s]), "the rack holds what is taken from it");
}

Packing told(const Problem& problem, const Prepared& prepared, const Best& best) {
    Packing packing;
    Deal deal(problem);
    for (const Load& load : tidied(prepared.problem, best.plan()).loads) {
        Packed packed{prepared.stick_of[load.stick], {}};
        for (std::size_t i = 0; i < load.of.size(); ++i)
            for (int n = 0; n < load.of[i]; ++n) packed.pieces.push_back(deal.next(prepared.problem.kinds[i].length));
        if (load.stick == prepared.made_up) {
            packing.left_over.insert(packing.left_over.end(), packed.pieces.begin(), packed.pieces.end());
            continue;
        }
        packing.cost += problem.sticks[packed.stick].price;
        packing.sticks.push_back(std::move(packed));
    }
    measure::require(deal.done(), "every piece is dealt out");
    packing.bound = std::min(best.bound() * prepared.divisor, packing.cost);
    require_counted(problem, packing);
    return packing;
}

}  // namespace

Packing pack(const Problem& problem, std::int64_t effort) {
    const Prepared ready = prepared(problem);
    if (has_many(ready.problem)) {
        const Coarse coarse(ready.problem);
        Best best(coarse.bound());
        try_first_fit(best, ready.problem);
        best.take(coarse.plan());
        return told(problem, ready, best);
    }
    const Relaxation relaxation = relax_wholly(ready.problem);
    Best best(relaxation.bound);
    try_first_fit(best, ready.problem);
    std::int64_t tries = most_of_tries;
    try_quickly(best, ready.problem, relaxation, tries);
    if (!best.proved()) search(best, ready.problem, relaxation.prices, tries, effort);
    return told(problem, ready, best);
}

Packing pack_as_they_come(const Problem& problem) {
    const Prepared ready = prepared(problem);
    Best best(0);
    try_first_fit(best, ready.problem);
    return told(problem, ready, best);
}

}  // namespace kerfpacket::stock
