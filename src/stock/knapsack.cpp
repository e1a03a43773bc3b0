#include "stock/knapsack.h"

#include <algorithm>
#include <iterator>

namespace kerfpacket::stock {

Knapsack::Knapsack(const Problem& problem, const Counts& most, const Prices& prices) : kinds_(problem.kinds.size()) {
    const Units longest = longest_room(problem);
    for (std::size_t i = 0; i < kinds_; ++i) {
        if (prices[i] <= 0) continue;
        const Units length = problem.kinds[i].length;
        int left = static_cast<int>(std::min<Units>(most[i], longest / length));
        for (int count = 1; left > 0; count *= 2) {
            const int part = std::min(count, left);
            left -= part;
            add({i, part, length * part, prices[i] * part}, longest);
        }
    }
}

/// The steps so far, and the same with the part beside them: of both together those that are higher than all before.
void Knapsack::add(const Part& part, Units longest) {
    const std::size_t end = steps_.size();
    std::size_t without = begins_[parts_.size()];
    std::size_t with = without;
    std::size_t with_end = end;
    while (with_end > with && steps_[with_end - 1].room + part.weight > longest) --with_end;
    std::int64_t highest = -1;
    while (without < end || with < with_end) {
        const bool takes =
            without == end || (with < with_end && steps_[with].room + part.weight < steps_[without].room);
        Step next = takes ? steps_[with++] : steps_[without++];
        if (takes) next = {next.room + part.weight, next.worth + part.worth};
        if (next.worth <= highest) continue;
        if (steps_.size() > end && steps_.back().room == next.room) steps_.back() = next;
        else steps_.push_back(next);
        highest = next.worth;
    }
    begins_.push_back(steps_.size());
    parts_.push_back(part);
}

std::int64_t Knapsack::best(std::size_t parts, Units room) const {
    const auto at = [&](std::size_t n) { return steps_.begin() + static_cast<std::ptrdiff_t>(begins_[n]); };
    const auto higher = std::upper_bound(at(parts), at(parts + 1), room,
                                         [](Units value, const Step& step) { return value < step.room; });
    return std::prev(higher)->worth;
}

Counts Knapsack::load(Units room) const {
    Counts load(kinds_, 0);
    for (std::size_t n = parts_.size(); n-- > 0;) {
        const Part& part = parts_[n];
        if (room < part.weight || best(n, room - part.weight) + part.worth <= best(n, room)) continue;
        load[part.kind] += part.count;
        room -= part.weight;
    }
    return load;
}

}  // namespace kerfpacket::stock
