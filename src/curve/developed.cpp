#include "curve/developed.h"

#include <algorithm>
#include <cmath>
#include <memory>
#include <utility>
#include <vector>

namespace kerfpacket::curve {
namespace {

using geom::Segment;

Curve of_arcs(const Path& path, double part) {
    std::vector<Segment> segments;
    Point at = path.start();
    Direction along = path.segments().front().start_direction();
    for (const Segment& s : path.segments()) {
        const Angle turn = s.turn * part;
        const Length chord =
            turn.radians() == 0 ? s.length() : s.length() * (std::sin(turn.radians() / 2) / (turn.radians() / 2));
        const Point to = at + along.turned(turn / 2) * chord;
        segments.push_back({at, to, turn});
        at = to;
        along = along.turned(turn);
    }
    return Curve::of(Path(std::move(segments)));
}

/// Between two distances of a curve, smooth all along.
class Laid {
public:
    Laid(Curve curve, double part, Length from, Length to, Point start)
        : curve_(std::move(curve)), part_(part), along_(curve_.at({}).direction), from_(from) {
        constexpr double usual_step = 5;  // mm
        const double steps = std::max(2.0, std::ceil((to - from).mm() / usual_step));
        step_ = (to - from) / steps;
        points_.push_back(start);
        for (int i = 0; i < static_cast<int>(steps); ++i)
            points_.push_back(points_.back() + sum(from_ + step_ * i, from_ + step_ * (i + 1)));
    }

    Point end() const { return points_.back(); }

    Jet at(double mm) const {
        const Length at = Length::mm(mm);
        const double last = static_cast<double>(points_.size()) - 2;
        const double step = std::clamp(std::floor((at - from_) / step_), 0.0, last);
        const Spot spot = curve_.at(at);
        const Direction along = direction(spot);
        const double bend = spot.curvature * part_;
        return {points_[static_cast<std::size_t>(step)] + sum(from_ + step_ * step, at), along * Length::mm(1),
                along.left() * Length::mm(bend)};
    }

private:
    Direction direction(const Spot& spot) const { return along_.turned(spot.turned * part_); }

    Point sum(Length from, Length to) const {
        const Length step = to - from;
        const auto share = [&](Length at, double weight) { return direction(curve_.at(at)) * (step * (weight / 6)); };
        return share(from, 1) + share((from + to) / 2, 4) + share(to, 1);
    }

    Curve curve_;
    double part_;
    Direction along_;
    Length from_;
    Length step_;
    std::vector<Point> points_;
};

}  // namespace

Curve developed(const Curve& curve, double part) {
    if (curve.is_exact_path()) return of_arcs(curve.path(), part);
    const std::vector<Length> joints = curve.joints();
    std::vector<Stretch> stretches;
    Point start = curve.at({}).point;
    for (std::size_t i = 0; i + 1 < joints.size(); ++i) {
        const auto laid = std::make_shared<const Laid>(curve, part, joints[i], joints[i + 1], start);
        stretches.emplace_back(
            Parametric{[laid](double mm) { return laid->at(mm); }, joints[i].mm(), joints[i + 1].mm()});
        start = laid->end();
    }
    return Curve(std::move(stretches));
}

}  // namespace kerfpacket::curve
