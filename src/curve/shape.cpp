#include "curve/shape.h"

#include <boost/math/tools/toms748_solve.hpp>
#include <cmath>

#include "curve/arch.h"
#include "measure/require.h"

namespace kerfpacket::curve {
namespace {

/// Legs are drawn this long where the job does not say.
constexpr Length usual_leg = Length::inches(1);

/// The figures that a shape needs besides the span: a half circle's rise is half its span, a pointed head given by its
/// radius rises sqrt(2 R a - a^2).
Length rise_of(const job::Opening& opening) {
    const Length half = opening.span.value / 2;
    if (opening.shape.value == job::Shape::semicircular) return half;
    if (!opening.radius) return opening.rise.value;
    const Length past = 2 * opening.radius->value - half;
    return past.mm() > 0 ? half * std::sqrt(past / half) : Length();
}

Frame frame_of(const job::Opening& opening, measure::Unit units) {
    const Length half = opening.span.value / 2;
    Length higher;
    if (opening.legs) higher = ((*opening.legs)[0].value - (*opening.legs)[1].value) / 2;
    return {opening, units, {-half, higher}, {half, -higher}, rise_of(opening)};
}

Arch arch(const Frame& frame) {
    switch (frame.opening.shape.value) {
        case job::Shape::segmental: return segmental(frame);
        case job::Shape::semicircular: return semicircular(frame);
        case job::Shape::elliptical: return elliptical(frame);
        case job::Shape::three_centred: return three_centred(frame);
        case job::Shape::pointed: return pointed(frame);
        case job::Shape::tudor: return tudor(frame);
        case job::Shape::parabolic: return parabolic(frame);
        case job::Shape::catenary: return catenary(frame);
        case job::Shape::horseshoe: return horseshoe(frame);
        case job::Shape::eyebrow: return eyebrow(frame);
        case job::Shape::ordinates: break;
    }
    throw measure::Bug("internal check failed: measured ordinates are surveyed, not drawn by a law");
}

/// Left leg, arch, right leg.
Outline on_legs(std::vector<Curve> arch, const job::Opening& opening) {
    const auto leg = [&](std::size_t side) {
        const Length given = opening.legs ? (*opening.legs)[side].value : Length();
        return given.mm() > 0 ? given : usual_leg;
    };
    const Point left = arch.front().at({}).point;
    const Point right = arch.back().at(arch.back().length()).point;
    std::vector<Curve> runs{Curve({geom::Segment{left - Point{{}, leg(0)}, left, {}}})};
    runs.insert(runs.end(), arch.begin(), arch.end());
    runs.push_back(Curve({geom::Segment{right, right - Point{{}, leg(1)}, {}}}));
    return Outline(std::move(runs));
}

/// Height over x = 0 of a curve that passes it once.
Length height_over_middle(const Curve& curve) {
    const auto station = [&](double along) { return curve.at(Length::mm(along)).point.x.mm(); };
    boost::uintmax_t steps = 100;
    const auto bracket = boost::math::tools::toms748_solve(station, 0.0, curve.length().mm(),
                                                           boost::math::tools::eps_tolerance<double>(50), steps);
    return curve.at(Length::mm((bracket.first + bracket.second) / 2)).point.y;
}

tl::expected<Head, job::Diagnostics> surveyed(const job::Opening& opening, measure::Unit units) {
    const job::Ordinates& ordinates = opening.ordinates.value();
    std::vector<Point> points;
    for (const job::Ordinate& p : ordinates.points) points.push_back({p.station.value, p.height.value});
    // Twice the thickness: the liner's inner face then still has a radius of its own.
    auto found = measured(points, ordinates, 2 * opening.liner.thickness.value, units);
    if (!found) return tl::unexpected(found.error());
    Measured there = centred(std::move(*found));
    const Length span = there.curve.at(there.curve.length()).point.x - there.curve.at({}).point.x;
    const Length rise = height_over_middle(there.curve);
    return Head{on_legs({std::move(there.curve)}, opening), span, rise, std::move(there.survey)};
}

}  // namespace

Length radius_from_chord(Length chord, Length rise) { return chord * (chord / (8 * rise)) + rise / 2; }

Angle turn_from_chord(Length chord, Length rise) { return Angle::radians(4 * std::atan(2 * rise / chord)); }

tl::expected<Head, job::Diagnostics> head(const job::Opening& opening, measure::Unit units) {
    if (opening.shape.value == job::Shape::ordinates) return surveyed(opening, units);
    const Frame frame = frame_of(opening, units);
    Arch runs = arch(frame);
    if (!runs) return tl::unexpected(runs.error());
    if (goes_on_straight(opening.shape.value))
        for (Curve& run : *runs) run = run.going_on_straight();
    return Head{on_legs(std::move(*runs), opening), opening.span.value, frame.rise, std::nullopt};
}

bool goes_on_straight(job::Shape shape) { return shape == job::Shape::eyebrow || shape == job::Shape::ordinates; }

Length widest(const Head& head) {
    const auto& runs = head.outline.runs();
    geom::Rect box = runs.at(1).path().bounds();
    for (std::size_t i = 2; i + 1 < runs.size(); ++i) box = geom::united(box, runs[i].path().bounds());
    return box.width();
}

}  // namespace kerfpacket::curve
