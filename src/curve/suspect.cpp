#include "curve/suspect.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numeric>

#include "curve/fit.h"

namespace kerfpacket::curve {
namespace {

constexpr Length least_slip = Length::inches(1.0 / 4);
constexpr double over_median = 6;
constexpr double over_worst = 3;
constexpr double over_worst_at_end = 8;
/// Fewer others than this agree with almost anything.
constexpr std::size_t least_others = 7;
constexpr std::size_t least_others_of_end = 12;
/// Points whose neighbours contradict them most, which are looked at closely.
constexpr std::size_t most_candidates = 6;
/// Where points stand closer than a span's fortieth, their neighbours are taken that far apart: between near points the
/// direction is all noise.
constexpr std::size_t finest_step = 40;
/// How far beyond the last neighbours an end is looked for, in gaps.
constexpr double most_beyond = 4;

/// How far a point stands off what others say, and how that compares with what honest noise would make of it.
struct Off {
    Length by;
    double noise = 1;  ///< of the difference, where each point has noise 1
    Length fair_part() const { return measure::abs(by) / noise; }
};

/// The four nearest neighbours of point i at a step, on both sides where there are any; ascending.
std::array<std::size_t, 4> neighbours(std::size_t i, std::size_t count, std::size_t step) {
    std::array<std::size_t, 4> found{};
    std::size_t filled = 0;
    for (std::size_t k = 1; filled < found.size(); ++k) {
        if (i >= k * step) found[filled++] = i - k * step;
        if (filled < found.size() && i + k * step < count) found[filled++] = i + k * step;
    }
    std::sort(found.begin(), found.end());
    return found;
}

/// Off the cubic through the four neighbours, seen with the line from the first to the last of them level; none where
/// they turn so much that no such cubic goes through them.
std::optional<Off> off_neighbours(const std::vector<Point>& points, std::size_t i, std::size_t step) {
    const std::array<std::size_t, 4> at = neighbours(i, points.size(), step);
    const Point origin = points[at.front()];
    const Direction level = geom::direction(origin, points[at.back()]);
    const auto forth = [&](Point p) {
        const Point v = p - origin;
        const Direction up = level.left();
        return std::array<double, 2>{v.x.mm() * level.x + v.y.mm() * level.y, v.x.mm() * up.x + v.y.mm() * up.y};
    };
    std::array<std::array<double, 2>, 4> others{};
    std::transform(at.begin(), at.end(), others.begin(), [&](std::size_t k) { return forth(points[k]); });
    for (std::size_t k = 1; k < others.size(); ++k)
        if (others[k][0] - others[k - 1][0] < 0.05 * others.back()[0]) return std::nullopt;
    const std::array<double, 2> own = forth(points[i]);
    // The two neighbours between which it belongs, or beside which at an end. It may stand far beyond them.
    const auto place = static_cast<std::size_t>(std::lower_bound(at.begin(), at.end(), i) - at.begin());
    const std::size_t after = std::clamp<std::size_t>(place, 1, 3);
    const double run = others[after][0] - others[after - 1][0];
    const double rise = others[after][1] - others[after - 1][1];
    const double low = others[after - 1][0] - (place == 0 ? most_beyond * run : 0);
    const double high = others[after][0] + (place == 4 ? most_beyond * run : 0);
    const double along = std::clamp(own[0], low, high);
    double height = own[1];
    double noise = 1;
    for (std::size_t k = 0; k < others.size(); ++k) {
        double weight = 1;
        for (std::size_t m = 0; m < others.size(); ++m)
            if (m != k) weight *= (along - others[m][0]) / (others[k][0] - others[m][0]);
        height -= weight * others[k][1];
        noise += weight * weight;
    }
    const double square = along == own[0] ? height * run / std::hypot(run, rise) : std::hypot(height, own[0] - along);
    return Off{Length::mm(std::copysign(square, height)), std::sqrt(noise)};
}

std::vector<Off> all_off_neighbours(const std::vector<Point>& points) {
    const std::size_t step = std::max<std::size_t>(1, points.size() / finest_step);
    std::vector<Off> all;
    for (std::size_t i = 0; i < points.size(); ++i) all.push_back(off_neighbours(points, i, step).value_or(Off{}));
    return all;
}

/// How well the others agree without a point, and how far that stands off them.
struct Verdict {
    Off off;
    Length worst;
    Length median;

    /// The smaller, the clearer.
    double doubt() const { return worst / off.fair_part(); }
    bool guilty(double times) const {
        return measure::abs(off.by) > least_slip && off.fair_part() > median * over_median &&
               off.fair_part() > worst * times;
    }
};

Verdict verdict(Off off, std::vector<Length> others) {
    for (Length& other : others) other = measure::abs(other);
    const auto middle = others.begin() + static_cast<std::ptrdiff_t>(others.size() / 2);
    std::nth_element(others.begin(), middle, others.end());
    return {off, *std::max_element(middle, others.end()), *middle};
}

std::vector<Verdict> verdicts(const std::vector<Point>& points, std::size_t i, Off off_neighbours) {
    const bool end = i == 0 || i + 1 == points.size();
    const Point left_out = points[i];
    std::vector<Point> others = points;
    others.erase(others.begin() + static_cast<std::ptrdiff_t>(i));
    std::vector<Verdict> found;
    if (!end) {
        std::vector<Length> off;
        for (const Off& other : all_off_neighbours(others)) off.push_back(other.fair_part());
        found.push_back(verdict(off_neighbours, std::move(off)));
    }
    if (const auto circle = fit_circle(others)) {
        const double sign = left_is_outward(points, circle->centre) ? 1 : -1;
        found.push_back(verdict({(distance(left_out, circle->centre) - circle->radius) * sign}, circle->misses.at));
    }
    if (end) return found;
    if (const auto ellipse = fit_ellipse(others))
        found.push_back(
            verdict({miss(*ellipse, left_out, left_is_outward(points, ellipse->centre))}, ellipse->misses.at));
    return found;
}

}  // namespace

std::optional<Survey::Suspect> find_suspect(const std::vector<Point>& points) {
    if (points.size() < least_others + 1) return std::nullopt;
    const std::vector<Off> off = all_off_neighbours(points);
    std::vector<std::size_t> order(points.size());
    std::iota(order.begin(), order.end(), std::size_t{0});
    std::stable_sort(order.begin(), order.end(),
                     [&](std::size_t a, std::size_t b) { return off[a].fair_part() > off[b].fair_part(); });
    order.resize(std::min(order.size(), most_candidates));
    std::optional<Survey::Suspect> suspect;
    double least_doubt = 1;
    for (const std::size_t i : order) {
        if (measure::abs(off[i].by) < least_slip / 2) continue;
        const bool end = i == 0 || i + 1 == points.size();
        if (end && points.size() < least_others_of_end + 1) continue;
        for (const Verdict& v : verdicts(points, i, off[i])) {
            if (!v.guilty(end ? over_worst_at_end : over_worst) || v.doubt() >= least_doubt) continue;
            least_doubt = v.doubt();
            suspect = {i, v.off.by};
        }
    }
    return suspect;
}

}  // namespace kerfpacket::curve
