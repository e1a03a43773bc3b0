#include "curve/stretch.h"

#include <Eigen/Core>
#include <algorithm>
#include <boost/math/quadrature/gauss.hpp>
#include <boost/math/quadrature/gauss_kronrod.hpp>
#include <cmath>

namespace kerfpacket::curve {
namespace {

using geom::Segment;
/// Tells its error, by which the nodes are chosen; between nodes the plain rule is as good and asks half as often.
using Checked = boost::math::quadrature::gauss_kronrod<double, 15>;
using Plain = boost::math::quadrature::gauss<double, 15>;

/// Turn that a node interval may hold: small enough to be told from two directions and for the quadrature to converge.
constexpr double most_turn = 0.4;
constexpr double quadrature_error = 1e-12;
constexpr int most_halvings = 24;

/// As Segment::point, but going on beyond the ends.
Jet segment_jet(const Segment& s, double u) {
    const double turn = s.turn.radians();
    const Length length = s.length();
    const Direction start = s.start_direction();
    const Direction along = start.turned(Angle::radians(turn * u));
    Point at = s.from + start * (length * u);
    if (!s.is_line()) {
        // The chord to the point leaves at half the turn made so far.
        const double half = turn * u / 2;
        const double chord = std::abs(half) < 1e-4 ? 1 - half * half / 6 : std::sin(half) / half;
        at = s.from + start.turned(Angle::radians(half)) * (length * (u * chord));
    }
    if (u == 1) at = s.to;
    return {at, along * length, along.left() * (length * turn)};
}

double dot(Point a, Point b) { return a.x.mm() * b.x.mm() + a.y.mm() * b.y.mm(); }
double cross(Point a, Point b) { return a.x.mm() * b.y.mm() - a.y.mm() * b.x.mm(); }

Point about_origin(Point p, Angle by) { return geom::turned(p, by); }

}  // namespace

Jet jet(const Stretch& stretch, double u) {
    if (const auto* segment = std::get_if<Segment>(&stretch)) return segment_jet(*segment, u);
    return std::get<Parametric>(stretch).at(u);
}

double first_parameter(const Stretch& stretch) {
    const auto* parametric = std::get_if<Parametric>(&stretch);
    return parametric != nullptr ? parametric->from : 0;
}

double last_parameter(const Stretch& stretch) {
    const auto* parametric = std::get_if<Parametric>(&stretch);
    return parametric != nullptr ? parametric->to : 1;
}

double speed(const Jet& jet) { return std::sqrt(dot(jet.first, jet.first)); }

double curvature(const Jet& jet) {
    const double v = speed(jet);
    return cross(jet.first, jet.second) / (v * v * v);
}

Direction direction(const Jet& jet) {
    const double v = speed(jet);
    return {jet.first.x.mm() / v, jet.first.y.mm() / v};
}

double length_between(const Stretch& stretch, double from, double to) {
    if (const auto* segment = std::get_if<Segment>(&stretch)) return segment->length().mm() * (to - from);
    if (from == to) return 0;
    return Plain::integrate([&](double u) { return speed(jet(stretch, u)); }, from, to);
}

namespace {

/// cosines[j][k]: of j times the angle of the k-th place. The same for every table, and a fair curve has hundreds.
using Cosines = std::array<std::array<double, LengthTable::terms>, LengthTable::terms>;
const Cosines& cosines() {
    static const Cosines all = [] {
        Cosines made{};
        for (std::size_t j = 0; j < made.size(); ++j)
            for (std::size_t k = 0; k < made.size(); ++k)
                made.at(j).at(k) = std::cos(static_cast<double>(j) *
                                            (Angle::pi * (static_cast<double>(k) + 0.5) / LengthTable::terms));
        return made;
    }();
    return all;
}

}  // namespace

LengthTable::LengthTable(const Stretch& stretch, double from, double to)
    : middle_((from + to) / 2), half_((to - from) / 2), start_(jet(stretch, from)) {
    std::array<Jet, terms> jets{};
    Rates rates{};
    for (std::size_t k = 0; k < terms; ++k) {
        jets.at(k) = jet(stretch, middle_ + half_ * cosines()[1].at(k));
        const double rate = speed(jets.at(k));
        rates.at(k) = {rate, rate * curvature(jets.at(k))};
    }
    series_ = integrated(rates);
    known_.front() = {from, 0, 0, speed(start_), curvature(start_)};
    known_.back() = known_at(to, jet(stretch, to));
    for (std::size_t k = 0; k < terms; ++k)
        known_.at(terms - k) = known_at(middle_ + half_ * cosines()[1].at(k), jets.at(k));
}

LengthTable::Series LengthTable::integrated(const Rates& rates) const {
    Series series{};
    for (std::size_t what = 0; what < 2; ++what) {
        std::array<double, terms + 2> rate{};
        for (std::size_t j = 0; j < terms; ++j)
            for (std::size_t k = 0; k < terms; ++k)
                rate.at(j) += 2.0 / terms * rates.at(k).at(what) * cosines().at(j).at(k);
        double at_start = 0;
        for (std::size_t j = 1; j <= terms; ++j) {
            double& here = series.at(j).at(what);
            here = half_ * (rate.at(j - 1) - rate.at(j + 1)) / (2 * static_cast<double>(j));
            at_start += j % 2 == 0 ? here : -here;
        }
        series.front().at(what) = -at_start;
    }
    return series;
}

LengthTable::Known LengthTable::known_at(double u, const Jet& there) const {
    return {u, (*this)(u).length, turn_between(start_, there), speed(there), curvature(there)};
}

/// By Clenshaw's recurrence, for length and turn at once, two terms at a time.
LengthTable::Gone LengthTable::operator()(double u) const {
    static_assert(terms % 2 == 1);
    using Pair = Eigen::Array2d;
    const auto term = [&](std::size_t j) { return Eigen::Map<const Pair>(series_[j].data()); };
    const double x = (u - middle_) / half_;
    const Pair twice = Pair::Constant(2 * x);
    Pair above = Pair::Zero();
    Pair next = Pair::Zero();
    for (std::size_t j = terms; j > 1; j -= 2) {
        above = twice * next - above + term(j);
        next = twice * above - next + term(j - 1);
    }
    above = twice * next - above + term(1);
    next = x * above - next + term(0);
    return {next[0], next[1]};
}

double turn_between(const Stretch& stretch, double from, double to) {
    if (const auto* segment = std::get_if<Segment>(&stretch)) return segment->turn.radians() * (to - from);
    return turn_between(jet(stretch, from), jet(stretch, to));
}

double turn_between(const Jet& from, const Jet& to) {
    return std::atan2(cross(from.first, to.first), dot(from.first, to.first));
}

std::vector<double> node_parameters(const Stretch& stretch) {
    std::vector<double> nodes{first_parameter(stretch)};
    if (std::holds_alternative<Segment>(stretch)) return {0, 1};
    // Halves until an interval is smooth; the stack holds the ends still to reach, nearest last.
    struct End {
        double u;
        int halvings;
    };
    std::vector<End> ends{{last_parameter(stretch), 0}};
    while (!ends.empty()) {
        const double from = nodes.back();
        const End end = ends.back();
        const double middle = (from + end.u) / 2;
        double error = 0;
        const double length =
            Checked::integrate([&](double u) { return speed(jet(stretch, u)); }, from, end.u, 0, 0, &error);
        const double turn =
            std::max({std::abs(turn_between(stretch, from, end.u)), std::abs(turn_between(stretch, from, middle)),
                      std::abs(turn_between(stretch, middle, end.u))});
        const bool smooth = turn <= most_turn && error <= quadrature_error * std::max(length, 1.0);
        if (smooth || end.halvings == most_halvings) {
            nodes.push_back(end.u);
            ends.pop_back();
        } else {
            ends.back().halvings = end.halvings + 1;
            ends.push_back({middle, end.halvings + 1});
        }
    }
    return nodes;
}

Stretch part_of(const Stretch& stretch, double from, double to) {
    if (const auto* segment = std::get_if<Segment>(&stretch)) {
        if (from == 0 && to == 1) return stretch;
        return Segment{segment_jet(*segment, from).point, segment_jet(*segment, to).point, segment->turn * (to - from)};
    }
    Parametric part = std::get<Parametric>(stretch);
    part.from = from;
    part.to = to;
    return part;
}

Stretch reversed(const Stretch& stretch) {
    if (const auto* segment = std::get_if<Segment>(&stretch)) return segment->reversed();
    const auto& forward = std::get<Parametric>(stretch);
    return Parametric{[at = forward.at](double u) {
                          const Jet there = at(-u);
                          return Jet{there.point, there.first * -1, there.second};
                      },
                      -forward.to, -forward.from};
}

Stretch moved(const Stretch& stretch, Point by) {
    if (const auto* segment = std::get_if<Segment>(&stretch))
        return Segment{segment->from + by, segment->to + by, segment->turn};
    Parametric there = std::get<Parametric>(stretch);
    there.at = [at = std::move(there.at), by](double u) {
        Jet j = at(u);
        j.point = j.point + by;
        return j;
    };
    return there;
}

Stretch turned(const Stretch& stretch, Angle by) {
    if (const auto* segment = std::get_if<Segment>(&stretch))
        return Segment{about_origin(segment->from, by), about_origin(segment->to, by), segment->turn};
    Parametric there = std::get<Parametric>(stretch);
    there.at = [at = std::move(there.at), by](double u) {
        const Jet j = at(u);
        return Jet{about_origin(j.point, by), about_origin(j.first, by), about_origin(j.second, by)};
    };
    return there;
}

}  // namespace kerfpacket::curve
