#include "curve/curve.h"

#include <algorithm>
#include <boost/math/tools/minima.hpp>
#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>

#include "curve/stretch.h"
#include "measure/require.h"

namespace kerfpacket::curve {
namespace {

/// Straighter than this is straight: a radius of 1000 km.
constexpr double straight = 1e-9;
/// Parts of a stretch in which the curvature is sampled between two nodes.
constexpr int samples = 6;

/// A parameter with its distance along a curve, and the distance for a unit of the parameter there.
struct Passed {
    double u = 0;
    double distance = 0;
    double rate = 0;
};

/// The parameter at a distance between two others, by the cubic that has their rates.
double parameter_at(double along, const Passed& a, const Passed& b) {
    const double whole = b.distance - a.distance, width = b.u - a.u;
    const double part = std::clamp((along - a.distance) / whole, 0.0, 1.0);
    if (a.rate <= 0 || b.rate <= 0) return a.u + width * part;
    const double from = whole / a.rate, to = whole / b.rate;
    return a.u + part * (from + part * (3 * width - 2 * from - to + part * (from + to - 2 * width)));
}

/// Length and turn for a unit of the parameter, at a part of the way between two parameters: of the parabolas that have
/// what is known there and come to what lies between.
LengthTable::Gone rates_between(const LengthTable::Known& a, const LengthTable::Known& b, double part) {
    const auto at = [&](double from, double to, double whole) {
        const double mean = whole / (b.u - a.u);
        return from + part * (to - from + (1 - part) * (6 * mean - 3 * (from + to)));
    };
    return {at(a.speed, b.speed, b.length - a.length),
            at(a.speed * a.curvature, b.speed * b.curvature, b.turned - a.turned)};
}

double offset_curvature(double curvature, double offset) { return curvature / (1 - offset * curvature); }

}  // namespace

Curve::Curve(std::vector<Stretch> stretches) {
    measure::require(!stretches.empty(), "a curve has stretches");
    Node node;
    Runs runs;
    for (Stretch& stretch : stretches) add(runs, std::move(stretch), node);
    runs_ = std::make_shared<const Runs>(std::move(runs));
}

void Curve::add(Runs& runs, Stretch stretch, Node& node) {
    Run run{std::move(stretch), {}, {}};
    const bool parametric = std::holds_alternative<Parametric>(run.stretch);
    const std::vector<double> parameters = node_parameters(run.stretch);
    for (std::size_t i = 0; i < parameters.size(); ++i) {
        if (i > 0) {
            const double from = parameters[i - 1], to = parameters[i];
            if (parametric) run.lengths.emplace_back(run.stretch, from, to);
            node.length += parametric ? run.lengths.back()(to).length : length_between(run.stretch, from, to);
            node.turned += turn_between(run.stretch, from, to);
        }
        node.u = parameters[i];
        run.nodes.push_back(node);
    }
    runs.push_back(std::move(run));
}

Curve Curve::of(const Path& path) {
    return Curve(std::vector<Stretch>(path.segments().begin(), path.segments().end()));
}

Curve Curve::with(std::vector<Stretch> stretches) const {
    Curve other(std::move(stretches));
    other.offset_ = offset_;
    other.straight_on_ = straight_on_;
    return other;
}

Curve Curve::going_on_straight() const {
    Curve other = *this;
    other.straight_on_ = {true, true};
    return other;
}

double Curve::beyond(double along) const {
    constexpr double rounding = 1e-9;
    if (straight_on_[0] && along < -rounding) return along;
    const double past = along - length().mm();
    return straight_on_[1] && past > rounding ? past : 0;
}

/// A line of the base, whose parallel at the offset is as long.
geom::Segment Curve::straight_on(const Place& from, double by) const {
    const Jet j = jet(runs()[from.run].stretch, from.node.u);
    return {j.point, j.point + direction(j) * Length::mm(by), {}};
}

double Curve::distance(const Node& node) const { return node.length - offset_.mm() * node.turned; }

Length Curve::length() const { return Length::mm(distance(runs().back().nodes.back())); }

Angle Curve::turn() const { return Angle::radians(runs().back().nodes.back().turned); }

Curve::Between Curve::between(double along) const {
    const Runs& runs = this->runs();
    const auto passed = [&](const Run& run) { return distance(run.nodes.back()) <= along; };
    const auto at = std::partition_point(runs.begin(), std::prev(runs.end()), passed);
    const Run& run = *at;
    const auto end = std::partition_point(std::next(run.nodes.begin()), std::prev(run.nodes.end()),
                                          [&](const Node& n) { return distance(n) <= along; });
    const Node& from = *std::prev(end);
    Between found{static_cast<std::size_t>(at - runs.begin()), static_cast<std::size_t>(end - run.nodes.begin()), 1,
                  distance(from), distance(*end)};
    if (run.lengths.empty()) return found;
    const auto& known = run.lengths[found.node - 1].known();
    const auto of = [&](const LengthTable::Known& k) { return distance(from.after(k.u, k.length, k.turned)); };
    const auto* const after = std::partition_point(std::next(known.begin()), std::prev(known.end()),
                                                   [&](const auto& k) { return of(k) <= along; });
    found.known = static_cast<std::size_t>(after - known.begin());
    found.from = std::max(found.from, of(*std::prev(after)));
    found.to = std::min(found.to, of(*after));
    return found;
}

Curve::Place Curve::place(const Between& between, double along) const {
    const Runs& runs = this->runs();
    const double outside = beyond(along);
    if (outside < 0) return {0, runs.front().nodes.front(), outside};
    if (outside > 0) return {runs.size() - 1, runs.back().nodes.back(), outside};
    const std::size_t r = between.run;
    const Run& run = runs[r];
    const Node& from = run.nodes[between.node - 1];
    const Node& to = run.nodes[between.node];
    // The end of the last stretch is exactly its last node.
    if (along == distance(to)) return {r, to};
    if (along == distance(from)) return {r, from};
    if (std::holds_alternative<geom::Segment>(run.stretch)) {
        const double linear = from.u + (to.u - from.u) * (along - distance(from)) / (distance(to) - distance(from));
        return {r,
                {linear, from.length + length_between(run.stretch, from.u, linear),
                 from.turned + turn_between(run.stretch, from.u, linear)}};
    }
    const LengthTable& lengths = run.lengths[between.node - 1];
    const auto node = [&](const Jet& j, double u) {
        const bool tabled = from.u <= u && u <= to.u;
        const double length = tabled ? lengths(u).length : length_between(run.stretch, from.u, u);
        return Node{u, from.length + length, from.turned + turn_between(lengths.start(), j)};
    };
    const double width = to.u - from.u;
    // So near that what a step to the place leaves out, its square, is rounding.
    const double near = 3e-8 * width;
    const LengthTable::Known &low = lengths.known()[between.known - 1], &high = lengths.known()[between.known];
    const auto passed_at = [&](const LengthTable::Known& k) {
        return Passed{k.u, distance(from.after(k.u, k.length, k.turned)), k.speed * (1 - offset_.mm() * k.curvature)};
    };
    Node there{parameter_at(along, passed_at(low), passed_at(high)), 0, 0};
    if (from.u <= there.u && there.u <= to.u) {
        // As a rule the table alone tells it.
        const auto [length, turned] = lengths(there.u);
        const auto [speed, turning] = rates_between(low, high, (there.u - low.u) / (high.u - low.u));
        const Node told{there.u, from.length + length, from.turned + turned};
        const double by = (along - distance(told)) / (speed - offset_.mm() * turning);
        if (std::abs(by) <= near) return {r, {told.u + by, told.length + by * speed, told.turned + by * turning}};
    }
    constexpr int most_steps = 20;
    for (int step = 0; step <= most_steps; ++step) {
        const Jet j = jet(run.stretch, there.u);
        there = node(j, there.u);
        const double by = (along - distance(there)) / (speed(j) * (1 - offset_.mm() * curve::curvature(j)));
        if (!std::isfinite(by)) break;
        if (std::abs(by) <= near) {
            const double length = by * speed(j);
            return {r, {there.u + by, there.length + length, there.turned + length * curve::curvature(j)}};
        }
        // Far beyond an end the law of the stretch may run out: not more than the interval at a time.
        if (step < most_steps) there.u += std::clamp(by, -width, width);
    }
    return {r, there};
}

Curve::Place Curve::Following::locate(Length distance) {
    const double along = distance.mm();
    if (along < last_.from || along >= last_.to) last_ = curve_.between(along);
    return curve_.place(last_, along);
}

double Curve::curvature(const Place& place, const Jet& there) const {
    return place.beyond == 0 ? offset_curvature(curve::curvature(there), offset_.mm()) : 0;
}

double Curve::Following::curvature(Length distance) {
    const Place place = locate(distance);
    return curve_.curvature(place, jet(curve_.runs()[place.run].stretch, place.node.u));
}

Spot Curve::spot(const Place& place) const {
    const Jet j = jet(runs()[place.run].stretch, place.node.u);
    const Direction along = direction(j);
    return {j.point + along * Length::mm(place.beyond) + along.left() * offset_, along, curvature(place, j),
            Angle::radians(place.node.turned)};
}

Spot Curve::at(Length distance) const { return spot(locate(distance.mm())); }

std::vector<Length> Curve::joints() const {
    std::vector<Length> found{Length()};
    for (const Run& run : runs()) found.push_back(Length::mm(distance(run.nodes.back())));
    return found;
}

Curve::Sharpest Curve::sharpest(Length from, Length to, double sign) const {
    // What goes on straight is nowhere sharp.
    from -= Length::mm(beyond(from.mm()));
    to -= Length::mm(beyond(to.mm()));
    Sharpest best{0, from};
    Following following(*this);
    const auto bend = [&](Length at) { return sign * following.curvature(at); };
    const auto consider = [&](Length at, double value) {
        if (value > best.curvature + straight) best = {value, at};
    };
    const Length tiny = (to - from) * 1e-9;
    for (const Run& run : runs()) {
        for (std::size_t i = 1; i < run.nodes.size(); ++i) {
            const bool first = &run == &runs().front() && i == 1;
            const bool last = &run == &runs().back() && i + 1 == run.nodes.size();
            const Length low = first ? from : std::max(from, Length::mm(distance(run.nodes[i - 1])));
            const Length high = last ? to : std::min(to, Length::mm(distance(run.nodes[i])));
            if (high - low <= tiny) continue;
            if (std::holds_alternative<geom::Segment>(run.stretch)) {
                consider((low + high) / 2, bend((low + high) / 2));
                continue;
            }
            const Length step = (high - low) / samples;
            // A hair inside, so that the neighbour's curvature at a joint does not count.
            for (int k = 0; k <= samples; ++k) {
                const Length at = std::clamp(low + step * k, low + tiny, high - tiny);
                consider(at, bend(at));
            }
            if (best.at > low && best.at < high) {
                const double left = std::max(low + tiny, best.at - step).mm();
                const double right = std::min(high - tiny, best.at + step).mm();
                const auto [at, value] = boost::math::tools::brent_find_minima(
                    [&](double mm) { return -bend(Length::mm(mm)); }, left, right, 40);
                consider(Length::mm(at), -value);
            }
        }
    }
    return best;
}

Curve::Sharpest Curve::sharpest_left(Length from, Length to) const { return sharpest(from, to, 1); }
Curve::Sharpest Curve::sharpest_right(Length from, Length to) const { return sharpest(from, to, -1); }

std::vector<Length> Curve::inflections() const {
    std::vector<Length> found;
    Following following(*this);
    double before = 0;
    Length last;
    const auto visit = [&](Length at, bool smooth) {
        const double bend = following.curvature(at);
        if (std::abs(bend) < straight) return;
        if (before * bend < 0) {
            Length where = (last + at) / 2;
            if (smooth) {
                const auto sign = [&](double mm) { return following.curvature(Length::mm(mm)); };
                boost::uintmax_t steps = 60;
                const auto bracket = boost::math::tools::toms748_solve(
                    sign, last.mm(), at.mm(), before, bend, boost::math::tools::eps_tolerance<double>(50), steps);
                where = Length::mm((bracket.first + bracket.second) / 2);
            }
            found.push_back(where);
        }
        before = bend;
        last = at;
    };
    for (const Run& run : runs()) {
        const bool parametric = std::holds_alternative<Parametric>(run.stretch);
        for (std::size_t i = 1; i < run.nodes.size(); ++i) {
            const Length low = Length::mm(distance(run.nodes[i - 1]));
            const Length high = Length::mm(distance(run.nodes[i]));
            const Length tiny = (high - low) * 1e-9;
            visit(low + tiny, parametric && i > 1);
            if (parametric)
                for (int k = 1; k < samples; ++k) visit(low + (high - low) * (static_cast<double>(k) / samples), true);
            visit(high - tiny, parametric);
        }
    }
    return found;
}

Curve Curve::parallel(Length left) const {
    Curve other = *this;
    other.offset_ += left;
    return other;
}

Length Curve::on_parallel(Length distance, Length left) const {
    return distance - left * locate(distance.mm()).node.turned;
}

Length Curve::from_parallel(Length distance, Length left) const {
    return Length::mm(this->distance(parallel(left).locate(distance.mm())));
}

Curve Curve::part(Length from, Length to) const {
    measure::require(from < to, "a part of a curve has length");
    const Place first = locate(from.mm());
    const Place last = locate(to.mm());
    Curve part;
    Runs parts;
    part.offset_ = offset_;
    // Where it is cut it goes on by its own law.
    part.straight_on_ = {straight_on_[0] && from <= Length(), straight_on_[1] && to >= length()};
    Node node;
    if (first.beyond < 0) {
        geom::Segment line = straight_on(first, first.beyond).reversed();
        if (last.beyond < 0) line = {line.from, straight_on(last, last.beyond).to, {}};
        add(parts, line, node);
    }
    for (std::size_t r = first.run; r <= last.run; ++r) {
        const Run& whole = runs()[r];
        const Node& low = r == first.run ? first.node : whole.nodes.front();
        const Node& high = r == last.run ? last.node : whole.nodes.back();
        if (high.u <= low.u) continue;
        const bool beyond = low.u < whole.nodes.front().u || high.u > whole.nodes.back().u;
        Stretch stretch = part_of(whole.stretch, low.u, high.u);
        if (beyond || std::holds_alternative<geom::Segment>(stretch)) {
            add(parts, std::move(stretch), node);
            continue;
        }
        // The nodes within are known already.
        Run run{std::move(stretch), {}, {}};
        const auto rebased = [&](const Node& n) {
            return Node{n.u, node.length + n.length - low.length, node.turned + n.turned - low.turned};
        };
        run.nodes.push_back(rebased(low));
        for (std::size_t i = 1; i < whole.nodes.size(); ++i) {
            if (whole.nodes[i].u <= low.u) continue;
            const Node& end = whole.nodes[i].u < high.u ? whole.nodes[i] : high;
            const bool all = run.nodes.back().u == whole.nodes[i - 1].u && end.u == whole.nodes[i].u;
            if (all) run.lengths.push_back(whole.lengths[i - 1]);
            else run.lengths.emplace_back(run.stretch, run.nodes.back().u, end.u);
            run.nodes.push_back(rebased(end));
            if (&end == &high) break;
        }
        node = run.nodes.back();
        parts.push_back(std::move(run));
    }
    if (last.beyond > 0) {
        const double from_end = std::max(0.0, first.beyond);
        add(parts, geom::Segment{straight_on(last, from_end).to, straight_on(last, last.beyond).to, {}}, node);
    }
    part.runs_ = std::make_shared<const Runs>(std::move(parts));
    return part;
}

Curve Curve::reversed() const {
    std::vector<Stretch> stretches;
    for (const Run& run : runs()) stretches.insert(stretches.begin(), curve::reversed(run.stretch));
    Curve other(std::move(stretches));
    other.offset_ = -offset_;
    other.straight_on_ = {straight_on_[1], straight_on_[0]};
    return other;
}

Curve Curve::moved(Point by) const {
    std::vector<Stretch> stretches;
    for (const Run& run : runs()) stretches.push_back(curve::moved(run.stretch, by));
    return with(std::move(stretches));
}

Curve Curve::turned(Angle by) const {
    std::vector<Stretch> stretches;
    for (const Run& run : runs()) stretches.push_back(curve::turned(run.stretch, by));
    return with(std::move(stretches));
}

bool Curve::is_exact_path() const {
    return std::all_of(runs().begin(), runs().end(),
                       [](const Run& run) { return std::holds_alternative<geom::Segment>(run.stretch); });
}

}  // namespace kerfpacket::curve
