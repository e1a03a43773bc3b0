#include "curve/outline.h"

#include <cmath>

#include "measure/require.h"

namespace kerfpacket::curve {
namespace {

/// What rounding leaves of a radius is no radius.
constexpr Length nothing = Length::mm(1e-6);

double cross(Direction a, Direction b) { return a.x * b.y - a.y * b.x; }
double dot(Direction a, Direction b) { return a.x * b.x + a.y * b.y; }
double cross(Point a, Direction b) { return a.x.mm() * b.y - a.y.mm() * b.x; }

struct Meeting {
    Length on_first;
    Length on_second;
};

/// Where the parallels of two runs that share a corner meet: Newton's method from the mitre of their tangents. None
/// where they do not.
std::optional<Meeting> meet(const Curve& first, const Curve& second, double corner, Length left) {
    const Length cut = left * std::tan(corner / 2);
    Length a = first.length() - cut;
    Length b = cut;
    constexpr int most_steps = 50;
    for (int step = 0; step < most_steps; ++step) {
        const Spot at_a = first.at(a);
        const Spot at_b = second.at(b);
        const Point gap = (at_b.point + at_b.direction.left() * left) - (at_a.point + at_a.direction.left() * left);
        const double rate_a = 1 - left.mm() * at_a.curvature;
        const double rate_b = 1 - left.mm() * at_b.curvature;
        if (rate_a <= 0 || rate_b <= 0) return std::nullopt;
        const double between = cross(at_a.direction, at_b.direction);
        // Solves gap = da * ta * rate_a - db * tb * rate_b.
        const Length by_a = Length::mm(cross(gap, at_b.direction) / (between * rate_a));
        const Length by_b = Length::mm(cross(gap, at_a.direction) / (between * rate_b));
        if (!by_a.finite() || !by_b.finite()) return std::nullopt;
        a += by_a;
        b += by_b;
        if (measure::abs(by_a).mm() + measure::abs(by_b).mm() < 1e-10) return Meeting{a, b};
    }
    return std::nullopt;
}

}  // namespace

Angle Outline::corner(std::size_t i) const {
    const Direction before = runs_.at(i).at(runs_[i].length()).direction;
    const Direction after = runs_.at(i + 1).at({}).direction;
    return Angle::radians(std::atan2(cross(before, after), dot(before, after)));
}

bool Outline::has_corner(std::size_t i) const { return std::abs(corner(i).degrees()) >= 0.01; }

tl::expected<std::vector<Extent>, Fold> Outline::extents(Length left) const {
    std::vector<Extent> extents;
    for (const Curve& run : runs_) extents.push_back({{}, run.length()});
    for (std::size_t i = 0; i + 1 < runs_.size(); ++i) {
        if (!has_corner(i)) continue;
        const auto meeting = meet(runs_[i], runs_[i + 1], corner(i).radians(), left);
        if (!meeting) return tl::unexpected(Fold{runs_[i + 1].at({}).point, {}, measure::abs(left)});
        extents[i].to = meeting->on_first;
        extents[i + 1].from = meeting->on_second;
    }
    for (std::size_t i = 0; i < runs_.size(); ++i) {
        const auto [from, to] = extents[i];
        if (to - from <= nothing)
            return tl::unexpected(Fold{runs_[i].at(runs_[i].length() / 2).point, {}, measure::abs(left)});
        const Curve::Sharpest sharpest =
            left > Length() ? runs_[i].sharpest_left(from, to) : runs_[i].sharpest_right(from, to);
        if (sharpest.curvature > 0 && Length::mm(1 / sharpest.curvature) - measure::abs(left) <= nothing)
            return tl::unexpected(
                Fold{runs_[i].at(sharpest.at).point, Length::mm(1 / sharpest.curvature), measure::abs(left)});
    }
    return extents;
}

std::vector<Path> Outline::parallel(Length left) const {
    const auto parts = extents(left);
    measure::require(parts.has_value(), "a parallel that is drawn does not fold");
    std::vector<Path> paths;
    for (std::size_t i = 0; i < runs_.size(); ++i) {
        std::vector<geom::Segment> segments =
            runs_[i].part((*parts)[i].from, (*parts)[i].to).parallel(left).path().segments();
        if (!paths.empty()) segments.front().from = paths.back().end();
        paths.emplace_back(std::move(segments));
    }
    return paths;
}

}  // namespace kerfpacket::curve
