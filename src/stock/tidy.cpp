#include "stock/tidy.h"

#include <algorithm>
#include <tuple>
#include <utility>

namespace kerfpacket::stock {
namespace {

Units square(Units value) { return value * value; }

class Exchange {
public:
    Exchange(const Problem& problem, Plan& plan) : problem_(problem), plan_(plan) {
        for (const Load& load : plan.loads) free_.push_back(problem.sticks[load.stick].room - weight(problem, load.of));
    }

    void run() {
        while (improve()) {}
    }

private:
    /// One pass over all pairs of sticks.
    bool improve() {
        bool any = false;
        for (std::size_t from = 0; from < plan_.loads.size(); ++from)
            for (std::size_t to = 0; to < plan_.loads.size(); ++to)
                if (from != to)
                    while (between(from, to)) any = true;
        return any;
    }

    /// Moves a piece of `from` to `to`, for a shorter one or for none, if that gathers the offcuts.
    bool between(std::size_t from, std::size_t to) {
        for (std::size_t i = 0; i < problem_.kinds.size(); ++i) {
            if (plan_.loads[from].of[i] == 0) continue;
            for (std::size_t j = i + 1; j <= problem_.kinds.size(); ++j) {
                const bool back = j < problem_.kinds.size();
                if (back && plan_.loads[to].of[j] == 0) continue;
                const Units shift = problem_.kinds[i].length - (back ? problem_.kinds[j].length : 0);
                if (free_[to] < shift) continue;
                const Units gain =
                    square(free_[from] + shift) + square(free_[to] - shift) - square(free_[from]) - square(free_[to]);
                if (gain <= 0) continue;
                move(from, to, i);
                if (back) move(to, from, j);
                return true;
            }
        }
        return false;
    }

    void move(std::size_t from, std::size_t to, std::size_t kind) {
        --plan_.loads[from].of[kind];
        ++plan_.loads[to].of[kind];
        free_[from] += problem_.kinds[kind].length;
        free_[to] -= problem_.kinds[kind].length;
    }

    const Problem& problem_;
    Plan& plan_;
    std::vector<Units> free_{};
};

}  // namespace

Plan tidied(const Problem& problem, Plan plan) {
    Exchange(problem, plan).run();
    std::vector<Counts> loads;
    for (Load& load : plan.loads) loads.push_back(std::move(load.of));
    // A stick may have been emptied, and a lighter load may do with a shorter one.
    Plan result = *on_sticks(problem, std::move(loads));
    std::sort(result.loads.begin(), result.loads.end(), [&](const Load& a, const Load& b) {
        const auto key = [&](const Load& load) {
            const Stick& stick = problem.sticks[load.stick];
            return std::pair(-stick.room, stick.for_sale());
        };
        return key(a) != key(b) ? key(a) < key(b) : a.of > b.of;
    });
    return result;
}

}  // namespace kerfpacket::stock
