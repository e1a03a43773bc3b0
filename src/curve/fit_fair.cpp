#include <algorithm>
#include <cmath>
#include <functional>

#include "curve/spline.h"
#include "curve/stretch.h"
#include "curve/survey.h"

namespace kerfpacket::curve {
namespace {

/// Places between two knots at which the curvature is looked at.
constexpr int samples = 4;

double dot(Point a, Point b) { return a.x.mm() * b.x.mm() + a.y.mm() * b.y.mm(); }

/// From the foot of the point on the spline, which lies near knot i; to the left of travel positive.
Length miss(const Spline& spline, std::size_t i, Point p) {
    const std::vector<double>& knots = spline.knots;
    const double low = i == 0 ? knots.front() : knots[i - 1];
    const double high = i + 1 == knots.size() ? knots.back() : knots[i + 1];
    double u = knots[i];
    Jet j = spline.at(u);
    constexpr int most_steps = 20;
    for (int step = 0; step < most_steps; ++step) {
        const Point off = p - j.point;
        const double slope = dot(j.first, j.first);
        const double bent = slope - dot(off, j.second);
        const double by = dot(off, j.first) / (bent > slope / 4 ? bent : slope);
        const double next = std::clamp(u + by, low, high);
        const double moved = std::abs(next - u);
        u = next;
        j = spline.at(u);
        if (moved <= 1e-9 * (high - low)) break;
    }
    // Where the foot lies beyond the neighbours the distance stands for it: more than the miss, never less.
    const Point off = p - j.point;
    const Direction left = direction(j).left();
    const double across = off.x.mm() * left.x + off.y.mm() * left.y;
    return Length::mm(std::copysign(std::sqrt(dot(off, off)), across));
}

Misses misses(const Spline& spline, const std::vector<Point>& points) {
    Misses found;
    for (std::size_t i = 0; i < points.size(); ++i) found.at.push_back(miss(spline, i, points[i]));
    return found;
}

double sharpest(const Spline& spline) {
    double most = 0;
    for (std::size_t i = 0; i + 1 < spline.knots.size(); ++i)
        for (int k = 0; k <= samples; ++k) {
            const double part = static_cast<double>(k) / samples;
            const double u = spline.knots[i] + (spline.knots[i + 1] - spline.knots[i]) * part;
            most = std::max(most, std::abs(curvature(spline.at(i, u))));
        }
    return most;
}

using Judge = std::function<bool(const Spline&)>;

/// Between the ends of the range the judgement turns over once: the smoothing there, on the side of `yes`.
double turning_point(const Smoother& smoother, double yes, double no, const Judge& holds) {
    while (std::abs(std::log(yes / no)) > 1e-3) {
        const double middle = std::sqrt(yes) * std::sqrt(no);
        (holds(smoother.smooth(middle)) ? yes : no) = middle;
    }
    return yes;
}

std::vector<double> chain(const std::vector<Point>& points) {
    std::vector<double> along{0};
    for (std::size_t i = 1; i < points.size(); ++i)
        along.push_back(along.back() + distance(points[i - 1], points[i]).mm());
    return along;
}

class Fitting {
public:
    Fitting(const std::vector<Point>& points, const Fairness& fairness) : points_(points), fairness_(fairness) {
        if (!fairness.end_angles) return;
        const auto& [left, right] = *fairness.end_angles;
        ends_ = {Direction::at(left), Direction::at(right)};
    }

    Spline result() const {
        // Where points stand close, what they miss by makes the chain of their chords too long. So a first fit tells
        // where along the curve they lie.
        const Spline first = smoothest(smoother(points_, Smoother::Trend::cubic));
        const Spline fair = smoothest(smoother(first.points, Smoother::Trend::cubic));
        return keeps_radius(fair) ? fair : wider(first.points).value_or(fair);
    }

private:
    Smoother smoother(const std::vector<Point>& along, Smoother::Trend trend) const {
        return {chain(along), points_, trend, ends_};
    }

    bool keeps_misses(const Spline& spline) const {
        for (std::size_t i = 0; i < points_.size(); ++i) {
            // Near its own place on the spline a point is near enough; the foot costs more.
            if (distance(points_[i], spline.points[i]) <= fairness_.miss) continue;
            if (measure::abs(miss(spline, i, points_[i])) > fairness_.miss) return false;
        }
        return true;
    }

    bool keeps_radius(const Spline& spline) const { return sharpest(spline) * fairness_.least_radius.mm() <= 1; }

    Spline smoothest(const Smoother& smoother) const {
        const auto keeps = [this](const Spline& spline) { return keeps_misses(spline); };
        const auto [least, most] = smoother.range();
        if (Spline spline = smoother.smooth(most); keeps(spline)) return spline;
        if (!keeps(smoother.smooth(least))) return smoother.smooth(0);
        return smoother.smooth(turning_point(smoother, least, most, keeps));
    }

    /// Smoothed no more than the radius asks for: toward the trend if that will do, else toward a straight line. None
    /// where even that is too sharp, for the end angles ask for it.
    std::optional<Spline> wider(const std::vector<Point>& along) const {
        const auto keeps = [this](const Spline& spline) { return keeps_radius(spline); };
        const auto widened = [&](const Smoother& smoother) -> std::optional<Spline> {
            const auto [least, most] = smoother.range();
            if (!keeps(smoother.smooth(most))) return std::nullopt;
            if (keeps(smoother.smooth(least))) return smoother.smooth(least);
            return smoother.smooth(turning_point(smoother, most, least, keeps));
        };
        if (auto spline = widened(smoother(along, Smoother::Trend::cubic))) return spline;
        return widened(smoother(along, Smoother::Trend::straight));
    }

    const std::vector<Point>& points_;
    Fairness fairness_;
    std::optional<std::array<Direction, 2>> ends_;
};

/// One stretch between two knots, for the rate of bending changes at a knot.
Curve curve_of(const std::shared_ptr<const Spline>& spline) {
    std::vector<Stretch> stretches;
    for (std::size_t i = 0; i + 1 < spline->knots.size(); ++i)
        stretches.emplace_back(
            Parametric{[spline, i](double u) { return spline->at(i, u); }, spline->knots[i], spline->knots[i + 1]});
    return Curve(std::move(stretches));
}

}  // namespace

FairFit fit_fair(const std::vector<Point>& points, const Fairness& fairness) {
    const auto spline = std::make_shared<const Spline>(Fitting(points, fairness).result());
    return {curve_of(spline), misses(*spline, points)};
}

}  // namespace kerfpacket::curve
