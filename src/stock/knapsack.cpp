#include "stock/knapsack.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace kerfpacket::stock {
namespace {

/// Going through a step takes as long as through so many rooms of a table: measured. What is best and which load has it
/// are the same by both.
constexpr std::size_t rooms_a_step = 16;

}  // namespace

Knapsack::Knapsack(const Problem& problem, const Counts& most, const Prices& prices)
    : kinds_(problem.kinds.size()), longest_(longest_room(problem)) {
    for (std::size_t i = 0; i < kinds_; ++i) {
        if (prices[i] <= 0) continue;
        const Units length = problem.kinds[i].length;
        int left = static_cast<int>(std::min<Units>(most[i], longest_ / length));
        for (int count = 1; left > 0; count *= 2) {
            const int part = std::min(count, left);
            left -= part;
            add({i, part, length * part, prices[i] * part});
        }
    }
}

void Knapsack::add(Part part) {
    const std::size_t steps = begins_.back() - *std::prev(begins_.end(), 2);
    if (table_.empty() && steps * rooms_a_step > static_cast<std::size_t>(longest_)) make_table();
    if (table_.empty()) add_to_steps(part);
    else add_to_table(part);
    parts_.push_back(std::move(part));
}

/// The steps so far, and the same with the part beside them: of both together those that are higher than all before.
void Knapsack::add_to_steps(const Part& part) {
    const std::size_t end = steps_.size();
    std::size_t without = begins_[parts_.size()];
    std::size_t with = without;
    std::size_t with_end = end;
    while (with_end > with && steps_[with_end - 1].room + part.weight > longest_) --with_end;
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
    work_ += static_cast<std::int64_t>(steps_.size() - end);
}

void Knapsack::make_table() {
    table_.reserve(static_cast<std::size_t>(longest_) + 1);
    for (std::size_t at = begins_[parts_.size()]; at < steps_.size(); ++at) {
        const Units end = at + 1 < steps_.size() ? steps_[at + 1].room : longest_ + 1;
        table_.resize(static_cast<std::size_t>(end), steps_[at].worth);
    }
}

void Knapsack::add_to_table(Part& part) {
    work_ += static_cast<std::int64_t>(table_.size() / rooms_a_step);
    part.taken.assign(table_.size(), 0);
    const auto heavy = static_cast<std::size_t>(part.weight);
    for (std::size_t room = table_.size(); room-- > heavy;) {
        const std::int64_t with = table_[room - heavy] + part.worth;
        if (with <= table_[room]) continue;
        table_[room] = with;
        part.taken[room] = 1;
    }
}

std::int64_t Knapsack::best(Units room) const {
    return table_.empty() ? best(parts_.size(), room) : table_[static_cast<std::size_t>(room)];
}

std::int64_t Knapsack::best(std::size_t parts, Units room) const {
    const auto at = [&](std::size_t n) { return steps_.begin() + static_cast<std::ptrdiff_t>(begins_[n]); };
    const auto higher = std::upper_bound(at(parts), at(parts + 1), room,
                                         [](Units value, const Step& step) { return value < step.room; });
    return std::prev(higher)->worth;
}

bool Knapsack::takes(std::size_t part, Units room) const {
    const Part& one = parts_[part];
    if (!one.taken.empty()) return one.taken[static_cast<std::size_t>(room)] != 0;
    return room >= one.weight && best(part, room - one.weight) + one.worth > best(part, room);
}

Counts Knapsack::load(Units room) const {
    Counts load(kinds_, 0);
    for (std::size_t n = parts_.size(); n-- > 0;) {
        if (!takes(n, room)) continue;
        load[parts_[n].kind] += parts_[n].count;
        room -= parts_[n].weight;
    }
    return load;
}

}  // namespace kerfpacket::stock
