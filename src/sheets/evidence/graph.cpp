#include "sheets/evidence/graph.h"

#include <array>
#include <cmath>

namespace kerfpacket::sheets {
namespace {

Length inch_step(Length least) {
    constexpr std::array<double, 7> steps{0.125, 0.25, 0.5, 1, 2, 3, 6};
    for (const double step : steps)
        if (Length::inches(step) >= least) return Length::inches(step);
    Length step = 12_in;
    while (step < least) step *= 2;
    return step;
}

Length mm_step(Length least) {
    const double ten = std::pow(10, std::max(0.0, std::floor(std::log10(least.mm()))));
    for (const double step : {1.0, 2.0, 5.0})
        if (Length::mm(step * ten) >= least) return Length::mm(step * ten);
    return Length::mm(10 * ten);
}

/// Of the points between two that stay, the one farthest off their line stays where it is off by more than that (the
/// way of Ramer, Douglas and Peucker).
void keep_between(const std::vector<Point>& points, std::size_t first, std::size_t last, std::vector<bool>& kept) {
    constexpr Length off = Length::mm(0.02);
    if (last - first < 2 || points[first] == points[last]) return;
    const geom::Direction across = geom::direction(points[first], points[last]).left();
    const auto distance = [&](std::size_t i) {
        const Point from = points[i] - points[first];
        return measure::abs(from.x * across.x + from.y * across.y);
    };
    std::size_t farthest = first + 1;
    for (std::size_t i = first + 2; i < last; ++i)
        if (distance(i) > distance(farthest)) farthest = i;
    if (distance(farthest) <= off) return;
    kept[farthest] = true;
    keep_between(points, first, farthest, kept);
    keep_between(points, farthest, last, kept);
}

}  // namespace

Path thinned(const std::vector<Point>& points) {
    std::vector<bool> kept(points.size());
    kept.front() = kept.back() = true;
    keep_between(points, 0, points.size() - 1, kept);
    std::vector<Point> rest;
    for (std::size_t i = 0; i < points.size(); ++i)
        if (kept[i]) rest.push_back(points[i]);
    return Path::polyline(rest);
}

Length tape_step(Length range, int most, Unit unit) {
    // Rounding must not make a range that divides evenly take the next larger step.
    const Length least = range * ((1 - 1e-9) / most);
    return unit == Unit::inch ? inch_step(least) : mm_step(least);
}

std::vector<Path> Graph::inside(const std::vector<Point>& points) const {
    if (points.size() < 2) return {};
    return geom::clip(thinned(points), area.grown(0.01_pt));
}

void stroke_seamed(Pen& pen, const std::vector<Path>& parts, Length width, Dash dash) {
    for (const Path& part : parts) pen.stroke(Role::outline, part, width + 3_pt, Dash::solid, Ink::white);
    for (const Path& part : parts) pen.stroke(Role::outline, part, width, dash);
}

void ringed_dot(Pen& pen, Point at) {
    pen.fill(Role::outline, Path::circle(at, dot_ring_radius), Ink::white);
    pen.stroke(Role::outline, Path::circle(at, dot_ring_radius), pen.kit().style.line);
    pen.fill(Role::outline, Path::circle(at, 2.2_pt));
}

void beyond_arrow(Pen& pen, Point tip) {
    pen.fill(Role::outline, Path::rectangle({{tip.x - 6_pt, tip.y - 26_pt}, {tip.x + 6_pt, tip.y}}), Ink::white);
    pen.line(Role::outline, {tip.x, tip.y - 24_pt}, {tip.x, tip.y - 6_pt}, pen.kit().style.heavy);
    pen.arrow_head(Role::outline, tip, {0, 1}, 9_pt, 7_pt);
}

}  // namespace kerfpacket::sheets
