#include "stock/fit.h"

#include <algorithm>
#include <map>
#include <numeric>
#include <utility>

namespace kerfpacket::stock {
namespace {

/// Of short blanks a stick may hold millions of loads. So many are enough to find one that does, and fit into memory.
constexpr std::size_t most_candidates = 2000;

class Search {
public:
    Search(const Problem& problem, Counts sticks, const Prices& prices, std::int64_t& steps)
        : problem_(problem), prices_(prices), sticks_(std::move(sticks)), left_(wanted(problem)), steps_(steps) {
        const Knapsack knapsack(problem, left_, prices);
        for (const Stick& stick : problem.sticks) worth_.push_back(knapsack.best(stick.room));
    }

    Fitted run() {
        std::int64_t waste = 0;
        for (std::size_t s = 0; s < sticks_.size(); ++s) waste += worth_[s] * sticks_[s];
        for (std::size_t i = 0; i < left_.size(); ++i) waste -= prices_[i] * left_[i];
        if (waste < 0) return {};
        if (go_on(waste)) return {Fits::yes, loads_};
        return {steps_ <= 0 || cut_short_ ? Fits::not_known : Fits::no, {}};
    }

private:
    struct Candidate {
        std::int64_t wastes = 0;
        Load load;
    };

    /// Cuts the longest blank that is left, with others, from one of the sticks; then the rest.
    bool go_on(std::int64_t waste) {
        const auto longest = std::find_if(left_.begin(), left_.end(), [](int count) { return count > 0; });
        if (longest == left_.end()) return true;
        if (steps_ <= 0) return false;
        const auto key = std::pair(left_, sticks_);
        const auto failed = failed_.find(key);
        if (failed != failed_.end() && failed->second >= waste) return false;
        for (const Candidate& candidate : candidates(static_cast<std::size_t>(longest - left_.begin()), waste)) {
            take(candidate.load, 1);
            loads_.push_back(candidate.load);
            if (go_on(waste - candidate.wastes)) return true;
            loads_.pop_back();
            take(candidate.load, -1);
            if (steps_ <= 0) return false;
        }
        auto& known = failed_.try_emplace(key, waste).first->second;
        known = std::max(known, waste);
        return false;
    }

    void take(const Load& load, int sign) {
        for (std::size_t i = 0; i < left_.size(); ++i) left_[i] -= sign * load.of[i];
        sticks_[load.stick] -= sign;
    }

    /// What the sticks are longer than the blanks, together.
    Units spare() const {
        Units units = 0;
        for (std::size_t s = 0; s < sticks_.size(); ++s) units += problem_.sticks[s].room * sticks_[s];
        return units - weight(problem_, left_);
    }

    /// The loads with this blank that waste no more than allowed, by the prices and by the length, the least first: all
    /// of them, or the first found of very many.
    std::vector<Candidate> candidates(std::size_t longest, std::int64_t waste) {
        found_.clear();
        waste_ = waste;
        spare_ = spare();
        if (spare_ < 0) return {};
        density_.assign(left_.size() + 1, 0);
        for (std::size_t i = left_.size(); i-- > 0;) {
            const double own = left_[i] == 0 ? 0 : static_cast<double>(prices_[i]) / double(problem_.kinds[i].length);
            density_[i] = std::max(density_[i + 1], own);
        }
        load_.assign(left_.size(), 0);
        load_[longest] = 1;
        extend(longest, problem_.kinds[longest].length, prices_[longest]);
        std::vector<Candidate> found = std::move(found_);
        std::stable_sort(found.begin(), found.end(), [](const Candidate& a, const Candidate& b) {
            return a.wastes != b.wastes ? a.wastes < b.wastes : a.load.of > b.load.of;
        });
        return found;
    }

    /// The shortest stick left that holds so much. A load takes that one: whatever else would lie on it goes as well on
    /// the longer stick that this load would have taken.
    std::optional<std::size_t> shortest(Units units) const {
        for (std::size_t s = 0; s < sticks_.size(); ++s)
            if (sticks_[s] > 0 && problem_.sticks[s].room >= units) return s;
        return std::nullopt;
    }

    /// Whether some stick, filled up at the best price by length that is left, wastes no more than allowed.
    bool hopeful(std::size_t from, Units units, std::int64_t worth) const {
        for (std::size_t s = 0; s < sticks_.size(); ++s) {
            if (sticks_[s] == 0 || problem_.sticks[s].room < units) continue;
            const double filled = density_[from] * static_cast<double>(problem_.sticks[s].room - units);
            if (static_cast<double>(worth_[s] - worth) - filled <= static_cast<double>(waste_) + 1) return true;
        }
        return false;
    }

    void extend(std::size_t from, Units units, std::int64_t worth) {
        const auto stick = shortest(units);
        if (!stick || --steps_ <= 0) return;
        if (found_.size() == most_candidates) {
            cut_short_ = true;
            return;
        }
        if (worth_[*stick] - worth <= waste_ && problem_.sticks[*stick].room - units <= spare_)
            found_.push_back({worth_[*stick] - worth, {*stick, load_}});
        for (std::size_t i = from; i < left_.size(); ++i) {
            if (load_[i] >= left_[i] || !shortest(units + problem_.kinds[i].length)) continue;
            if (!hopeful(i, units, worth)) return;
            ++load_[i];
            extend(i, units + problem_.kinds[i].length, worth + prices_[i]);
            --load_[i];
        }
    }

    const Problem& problem_;
    const Prices& prices_;
    Counts sticks_;
    Counts left_;
    std::int64_t& steps_;
    std::vector<std::int64_t> worth_{};  ///< the most that a stick holds
    std::map<std::pair<Counts, Counts>, std::int64_t> failed_{};
    std::vector<Load> loads_{};
    bool cut_short_ = false;  ///< some loads were never looked at
    // Of the list of candidates that is being made.
    std::vector<Candidate> found_{};
    std::vector<double> density_{};  ///< best price by length, of this kind and those after it
    Counts load_{};
    std::int64_t waste_ = 0;
    Units spare_ = 0;
};

}  // namespace

Fitted fit(const Problem& problem, const Counts& sticks, const Prices& prices, std::int64_t& steps) {
    return Search(problem, sticks, prices, steps).run();
}

}  // namespace kerfpacket::stock
