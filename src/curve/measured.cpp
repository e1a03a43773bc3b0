// Measured ordinates: the answer that the job uses becomes a curve.

#include <algorithm>
#include <cmath>

#include "curve/arch.h"

namespace kerfpacket::curve {
namespace {

using job::say;
using job::shown;

/// Finer than a tape shows: a run that bulges less is straight.
constexpr Length finest = Length::inches(1.0 / 64);

bool in_line(const std::vector<Point>& points) {
    const Direction across = geom::direction(points.front(), points.back()).left();
    return std::all_of(points.begin(), points.end(), [&](Point p) {
        const Point v = p - points.front();
        return measure::abs(v.x * across.x + v.y * across.y) < finest;
    });
}

/// Whether the points bulge up over the string between the first and the last.
bool bulges_up(const std::vector<Point>& points) {
    const Direction across = geom::direction(points.front(), points.back()).left();
    Length sum;
    for (const Point p : points) sum += (p.x - points.front().x) * across.x + (p.y - points.front().y) * across.y;
    return sum > Length();
}

/// The cosine at which an ellipse or a circle stands over a station; at its side where the station lies beyond.
double cosine_at(Length station, Length centre, Length half_width) {
    return std::clamp((station - centre) / half_width, -1.0, 1.0);
}

Curve through(const CircleFit& fit, const std::vector<Point>& points) {
    const bool up = bulges_up(points);
    const auto at = [&](Point end) {
        const double c = cosine_at(end.x, fit.centre.x, fit.radius);
        const double s = std::sqrt(1 - c * c);
        return Direction{c, up ? s : -s};
    };
    const Direction from = at(points.front());
    const Direction to = at(points.back());
    const Angle turn = Angle::radians(std::atan2(from.x * to.y - from.y * to.x, from.x * to.x + from.y * to.y));
    return Curve({geom::Segment{fit.centre + from * fit.radius, fit.centre + to * fit.radius, turn}});
}

Curve through(const EllipseFit& fit, const std::vector<Point>& points) {
    const Length height = bulges_up(points) ? fit.half_height : -fit.half_height;
    const auto at = [centre = fit.centre, width = fit.half_width, height](double u) {
        const double s = std::sin(u);
        const double c = std::cos(u);
        return Jet{centre + Point{width * s, height * c}, {width * c, height * -s}, {width * -s, height * -c}};
    };
    const auto parameter = [&](Point end) { return std::asin(cosine_at(end.x, fit.centre.x, fit.half_width)); };
    return Curve({Parametric{at, parameter(points.front()), parameter(points.back())}});
}

tl::unexpected<job::Diagnostics> far_off(const CircleFit& fit, const job::Ordinates& ordinates, measure::Unit units) {
    const job::Ordinate& point = ordinates.points.at(fit.misses.worst_point());
    return refused(
        ordinates.fit->at,
        say("circle_misses", "the best circle, R {radius}, misses the point at station {at} by {off}",
            {{"radius", shown(fit.radius, units)},
             {"at", shown(point.station.value, units)},
             {"off", shown(fit.misses.worst(), units)}}),
        say("arc_may_miss", R"(an arc may miss by {most} at most: measure that point again, or use fit = "fair")",
            {{"most", shown(most_miss, units)}}));
}

/// A board of that thickness follows no curve as sharp as these points ask for.
tl::unexpected<job::Diagnostics> too_sharp(const FairFit& fit, const job::Ordinates& ordinates, Length least_radius,
                                           measure::Unit units) {
    const job::Ordinate& point = ordinates.points.at(fit.misses.worst_point());
    return refused(point.station.at,
                   say("fair_misses", "a fair curve misses the point at station {at} by {off}",
                       {{"at", shown(point.station.value, units)}, {"off", shown(fit.misses.worst(), units)}}),
                   say("fair_misses_do",
                       "it bends no sharper than a radius of {radius}, twice the board's thickness: measure that "
                       "point again, or use a thinner board",
                       {{"radius", shown(least_radius, units)}}));
}

}  // namespace

tl::expected<Measured, job::Diagnostics> measured(const std::vector<Point>& points, const job::Ordinates& ordinates,
                                                  Length least_radius, measure::Unit units) {
    if (in_line(points))
        return refused(ordinates.at, say("straight", "these points lie in a straight line: nothing is bent here"),
                       say("straight_do", "expected at least one that stands off the line by {off}",
                           {{"off", shown(finest, units)}}));
    Survey answers = survey(points, ordinates, least_radius);
    switch (answers.used) {
        case job::Fit::arc: {
            if (!answers.circle)
                return refused(ordinates.fit->at, say("no_circle", "no circle goes through these points"),
                               say("no_circle_do", R"(use fit = "fair", which follows any curve)"));
            if (answers.circle->misses.worst() > most_miss) return far_off(*answers.circle, ordinates, units);
            Curve curve = through(*answers.circle, points);
            return Measured{std::move(answers), std::move(curve)};
        }
        case job::Fit::ellipse: {
            if (!answers.ellipse)
                return refused(ordinates.fit->at, say("no_ellipse", "no ellipse goes through these points"),
                               say("ellipse_points",
                                   R"(an ellipse takes at least {n} points round its end or crown: use fit = "fair")",
                                   {{"n", 5}}));
            Curve curve = through(*answers.ellipse, points);
            return Measured{std::move(answers), std::move(curve)};
        }
        case job::Fit::fair: break;
    }
    if (answers.fair.misses.worst() > most_miss) return too_sharp(answers.fair, ordinates, least_radius, units);
    Curve curve = answers.fair.curve;
    return Measured{std::move(answers), std::move(curve)};
}

Measured centred(Measured measured) {
    const Curve& curve = measured.curve;
    const Point by = geom::middle(curve.at({}).point, curve.at(curve.length()).point) * -1;
    Survey& survey = measured.survey;
    for (Point& p : survey.points) p = p + by;
    if (survey.circle) survey.circle->centre = survey.circle->centre + by;
    if (survey.ellipse) survey.ellipse->centre = survey.ellipse->centre + by;
    survey.fair.curve = survey.fair.curve.moved(by);
    measured.curve = measured.curve.moved(by);
    return measured;
}

}  // namespace kerfpacket::curve
