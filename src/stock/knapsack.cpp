#include "stock/knapsack.h"

#include <algorithm>
#include <utility>

namespace kerfpacket::stock {

Knapsack::Knapsack(const Problem& problem, const Counts& most, const Prices& prices)
    : kinds_(problem.kinds.size()), best_(static_cast<std::size_t>(longest_room(problem)) + 1, 0) {
    const Units longest = longest_room(problem);
    for (std::size_t i = 0; i < kinds_; ++i) {
        if (prices[i] <= 0) continue;
        const Units length = problem.kinds[i].length;
        int left = static_cast<int>(std::min<Units>(most[i], longest / length));
        for (int count = 1; left > 0; count *= 2) {
            const int part = std::min(count, left);
            left -= part;
            add({i, part, length * part, {}}, prices[i] * part);
        }
    }
}

void Knapsack::add(Part part, std::int64_t worth) {
    part.taken.assign(best_.size(), 0);
    const auto heavy = static_cast<std::size_t>(part.weight);
    for (std::size_t room = best_.size(); room-- > heavy;) {
        const std::int64_t with = best_[room - heavy] + worth;
        if (with <= best_[room]) continue;
        best_[room] = with;
        part.taken[room] = 1;
    }
    parts_.push_back(std::move(part));
}

Counts Knapsack::load(Units room) const {
    Counts load(kinds_, 0);
    for (auto part = parts_.rbegin(); part != parts_.rend(); ++part) {
        if (part->taken[static_cast<std::size_t>(room)] == 0) continue;
        load[part->kind] += part->count;
        room -= part->weight;
    }
    return load;
}

}  // namespace kerfpacket::stock
