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

}  // namespace

Length tape_step(Length range, int most, Unit unit) {
    // Rounding must not make a range that divides evenly take the next larger step.
    const Length least = range * ((1 - 1e-9) / most);
    return unit == Unit::inch ? inch_step(least) : mm_step(least);
}

std::vector<Path> Graph::inside(const std::vector<Point>& points) const {
    if (points.size() < 2) return {};
    return geom::clip(Path::polyline(points), area.grown(0.01_pt));
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
