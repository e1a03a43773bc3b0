#include "plan/splice_search.h"

#include <algorithm>
#include <cmath>
#include <cstddef>
#include <optional>
#include <utility>

#include "plan/splice.h"

namespace kerfpacket::plan {
namespace {

/// Joints of one board: more than a wall has.
constexpr std::size_t most_joints = 40;

/// What is wished of joints, the first before the others: least bend, least stock, blanks of like length.
struct Cost {
    double bend = 0;
    double stock = 0;
    double uneven = 0;
    auto operator<=>(const Cost&) const = default;  // NOLINT(modernize-use-nullptr): clang-tidy 14 errs on <=>
    Cost operator+(const Cost& other) const { return {bend + other.bend, stock + other.stock, uneven + other.uneven}; }
};

}  // namespace

std::vector<Place> chosen_joints(const Splicing& splicing, const std::vector<Place>& places) {
    struct Way {
        Cost cost;
        std::size_t before = 0;
        bool open = false;
    };
    const auto step = [&](const Place* from, const Place* to) -> std::optional<Cost> {
        const Length length = splicing.between(from, to);
        if (length > splicing.most() + hair || length < least_blank - hair) return std::nullopt;
        // In whole hundredths, so that sums taken in another order are the same.
        const auto whole = [](double value) { return std::round(value * 100); };
        const double bent = to == nullptr ? 0 : std::round(to->curvature * 1e9) + std::round(to->near.mm());
        return Cost{bent, whole(splicing.taken(length).mm()), whole(length.mm()) * whole(length.mm())};
    };
    std::vector<std::vector<Way>> ways;
    std::vector<Way> first(places.size());
    for (std::size_t i = 0; i < places.size(); ++i)
        if (const auto cost = step(nullptr, &places[i])) first[i] = {*cost, i, true};
    ways.push_back(std::move(first));
    for (std::size_t joints = 1; joints <= most_joints; ++joints) {
        const std::vector<Way>& last = ways.back();
        std::optional<std::size_t> best;
        Cost least;
        for (std::size_t i = 0; i < places.size(); ++i) {
            const auto rest = step(&places[i], nullptr);
            if (!last[i].open || !rest || (best && !(last[i].cost + *rest < least))) continue;
            best = i;
            least = last[i].cost + *rest;
        }
        if (best) {
            std::vector<Place> found(joints);
            std::size_t at = *best;
            for (std::size_t n = joints; n-- > 0;) {
                found[n] = places[at];
                at = ways[n][at].before;
            }
            return found;
        }
        std::vector<Way> next(places.size());
        for (std::size_t i = 0; i < places.size(); ++i)
            for (std::size_t j = 0; j < i; ++j) {
                if (!last[j].open) continue;
                const auto cost = step(&places[j], &places[i]);
                if (!cost || (next[i].open && !(last[j].cost + *cost < next[i].cost))) continue;
                next[i] = {last[j].cost + *cost, j, true};
            }
        ways.push_back(std::move(next));
    }
    return {};
}

}  // namespace kerfpacket::plan
