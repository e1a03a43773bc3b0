#include "geom/outside.h"

#include <algorithm>
#include <utility>

namespace kerfpacket::geom {
namespace {

/// Between which shares of its way the line is inside an area; the second is no greater than the first where it is not.
std::pair<double, double> inside(Point a, Point b, const Rect& area) {
    std::pair<double, double> span{0, 1};
    const auto narrow = [&](Length from, Length to, Length low, Length high) {
        if (from == to) {
            if (from <= low || from >= high) span = {1, 0};
            return;
        }
        const auto [first, last] = std::minmax({(low - from) / (to - from), (high - from) / (to - from)});
        span = {std::max(span.first, first), std::min(span.second, last)};
    };
    narrow(a.x, b.x, area.low.x, area.high.x);
    narrow(a.y, b.y, area.low.y, area.high.y);
    return span;
}

}  // namespace

std::vector<Path> outside(Point a, Point b, const std::vector<Rect>& areas) {
    std::vector<std::pair<double, double>> hidden;
    for (const Rect& area : areas)
        if (const auto span = inside(a, b, area); span.first < span.second) hidden.push_back(span);
    std::sort(hidden.begin(), hidden.end());
    hidden.emplace_back(1, 1);
    std::vector<Path> parts;
    double reached = 0;
    constexpr double speck = 1e-9;
    for (const auto& [from, to] : hidden) {
        if (from - reached > speck) parts.push_back(Path::line(a + (b - a) * reached, a + (b - a) * from));
        reached = std::max(reached, to);
    }
    return parts;
}

std::optional<Path> part_where(Point a, Point b, const std::function<bool(Point)>& holds) {
    const bool at_start = holds(a);
    if (at_start == holds(b)) return at_start ? std::optional(Path::line(a, b)) : std::nullopt;
    Point inside = at_start ? a : b;
    Point beyond = at_start ? b : a;
    constexpr int halvings = 40;
    for (int i = 0; i < halvings; ++i) {
        const Point between = middle(inside, beyond);
        (holds(between) ? inside : beyond) = between;
    }
    return at_start ? Path::line(a, inside) : Path::line(inside, b);
}

}  // namespace kerfpacket::geom
