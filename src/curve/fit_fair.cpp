#include <algorithm>
#include <cmath>
#include <functional>

#include <boost/math/quadrature/gauss.hpp>

#include "curve/fit.h"
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
    // It works over a length of about its sixth root.
    while (std::abs(std::log(yes / no)) > 5e-3) {
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

/// Lengths along the spline itself, from knot to knot.
std::vector<double> lengths(const Spline& spline) {
    std::vector<double> along{0};
    for (std::size_t i = 0; i + 1 < spline.knots.size(); ++i) {
        const auto rate = [&](double u) { return speed(spline.at(i, u)); };
        along.push_back(along.back() + boost::math::quadrature::gauss<double, 7>::integrate(rate, spline.knots[i],
                                                                                            spline.knots[i + 1]));
    }
    return along;
}

/// What the spline of the others leaves of each point, square to it.
Misses left_out(const Smoother::Validated& validated) {
    const auto& [spline, off] = validated;
    Misses found;
    for (std::size_t i = 0; i < off.size(); ++i) {
        const Direction left = direction(spline.at(spline.knots[i])).left();
        found.at.push_back(off[i].x * left.x + off[i].y * left.y);
    }
    return found;
}

/// Mean square, mm^2.
double scatter(const Misses& misses) {
    double sum = 0;
    for (const Length miss : misses.at) sum += miss.mm() * miss.mm();
    return sum / static_cast<double>(misses.at.size());
}

/// A spline, and what it would be without each point.
struct Candidate {
    Spline spline;
    Misses left_out;
};

class Fitting {
public:
    Fitting(const std::vector<Point>& points, const Fairness& fairness, const std::optional<CircleFit>& circle,
            const std::optional<EllipseFit>& ellipse)
        : points_(points), fairness_(fairness), circle_(circle), ellipse_(ellipse) {
        if (!fairness.end_angles) return;
        const auto& [left, right] = *fairness.end_angles;
        ends_ = {Direction::at(left), Direction::at(right)};
    }

    Candidate result() const {
        Candidate best = off_cubic();
        const auto try_on = [&](Candidate other) {
            if (scatter(other.left_out) < scatter(best.left_out)) best = std::move(other);
        };
        if (auto over = over_stations()) try_on(std::move(*over));
        for (Candidate& other : off_conics()) try_on(std::move(other));
        if (keeps_radius(best.spline)) return best;
        if (auto spline = wider(lengths(best.spline))) best.spline = std::move(*spline);
        return best;
    }

private:
    Smoother smoother(std::vector<double> along, Smoother::Trend trend) const {
        return {std::move(along), points_, trend, ends_};
    }

    /// Where along the curve the points lie is told by a first curve, for chords are shorter than what they span; and
    /// where points stand close, what they miss by makes the chain of their chords too long.
    Candidate off_cubic() const {
        const Smoother first = smoother(chain(points_), Smoother::Trend::cubic);
        Candidate found{first.smooth(most_smoothing(first)), {}};
        constexpr int rounds = 2;
        for (int i = 0; i < rounds; ++i) found = as_scattered(smoother(lengths(found.spline), Smoother::Trend::cubic));
        return found;
    }

    /// As heights over the string between the ends, where the points go on along it: along its own length a parabola is
    /// no cubic, and between steep points it would be 0.05 in off.
    std::optional<Candidate> over_stations() const {
        if (ends_) return std::nullopt;  // they are slopes along its own length
        const Direction string = geom::direction(points_.front(), points_.back());
        std::vector<double> stations;
        for (const Point p : points_) {
            const Point v = p - points_.front();
            const double at = v.x.mm() * string.x + v.y.mm() * string.y;
            if (!stations.empty() && at - stations.back() < fairness_.miss.mm()) return std::nullopt;
            stations.push_back(at);
        }
        return as_scattered(smoother(std::move(stations), Smoother::Trend::cubic));
    }

    /// Off the best circle and the best ellipse, where the points follow them round.
    std::vector<Candidate> off_conics() const {
        std::vector<Candidate> found;
        const auto add = [&](Point centre, Length width, Length height) {
            const double sense = left_is_outward(points_, centre) ? -1 : 1;
            std::vector<double> along;
            for (const Point p : points_) {
                const Point v = p - centre;
                double angle = sense * std::atan2(v.y / height, v.x / width);
                if (!along.empty()) angle += 2 * Angle::pi * std::round((along.back() - angle) / (2 * Angle::pi));
                if (!along.empty() && angle <= along.back()) return;
                along.push_back(angle);
            }
            const double unit = chain(points_).back() / (along.back() - along.front());
            for (double& u : along) u *= unit;
            const auto law = [=](double u) {
                const double c = std::cos(u / unit);
                const double s = std::sin(u / unit) * sense;
                const double s1 = sense / unit;
                return Jet{centre + Point{width * c, height * s},
                           {width * (-s * s1), height * (c * s1)},
                           {width * (-c / (unit * unit)), height * (-s / (unit * unit))}};
            };
            found.push_back(as_scattered(Smoother(std::move(along), points_, law, ends_)));
        };
        if (circle_) add(circle_->centre, circle_->radius, circle_->radius);
        if (ellipse_) add(ellipse_->centre, ellipse_->half_width, ellipse_->half_height);
        return found;
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

    /// The greatest at which no point misses by more than it may.
    double most_smoothing(const Smoother& smoother) const {
        const auto keeps = [this](const Spline& spline) { return keeps_misses(spline); };
        const auto [least, most] = smoother.range();
        if (keeps(smoother.smooth(most))) return most;
        if (!keeps(smoother.smooth(least))) return 0;
        return turning_point(smoother, least, most, keeps);
    }

    /// Smoothed as far as the points tell of each other best, which is as far as they scatter: points that lie on a
    /// smooth curve are not smoothed at all; of those that tell all but the same the smoothest. Cross-validation:
    /// Craven and Wahba, Numerische Mathematik 31 (1979) 377-403.
    Candidate as_scattered(const Smoother& smoother) const {
        constexpr double step = 10;
        constexpr double clearly = 0.98;
        // Few points may tell less for a while and then more again; to try on costs little.
        const int enough = points_.size() > 100 ? 4 : 100;
        Candidate best;
        double least_scatter = 0;
        int worse = 0;
        const double most = most_smoothing(smoother);
        for (double smoothing = most;; smoothing /= step) {
            const bool last = smoothing <= smoother.range()[0];
            Smoother::Validated validated = smoother.validated(smoothing);
            Misses left = left_out(validated);
            const double now = scatter(left);
            ++worse;
            if (best.spline.knots.empty() || now < least_scatter * clearly) {
                worse = 0;
                least_scatter = now;
                best = {std::move(validated.spline), std::move(left)};
            }
            if (last || worse == enough) return best;
        }
    }

    /// Smoothed no more than the radius asks for: toward the trend if that will do, else toward a straight line. None
    /// where even that is too sharp, for the end angles ask for it.
    std::optional<Spline> wider(const std::vector<double>& along) const {
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
    const std::optional<CircleFit>& circle_;
    const std::optional<EllipseFit>& ellipse_;
    Smoother::Ends ends_;
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

FairFit fit_fair(const std::vector<Point>& points, const Fairness& fairness, const std::optional<CircleFit>& circle,
                 const std::optional<EllipseFit>& ellipse) {
    Candidate found = Fitting(points, fairness, circle, ellipse).result();
    const auto spline = std::make_shared<const Spline>(std::move(found.spline));
    return {curve_of(spline), misses(*spline, points), std::move(found.left_out)};
}

FairFit fit_fair(const std::vector<Point>& points, const Fairness& fairness) {
    return fit_fair(points, fairness, fit_circle(points), fit_ellipse(points));
}

}  // namespace kerfpacket::curve
