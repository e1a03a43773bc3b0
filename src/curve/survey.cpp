#include "curve/survey.h"

#include <cmath>

#include "curve/fit.h"
#include "curve/suspect.h"

namespace kerfpacket::curve {
namespace {

/// An arc or an ellipse that no point misses by more is what was meant to be built.
constexpr Length close = Length::inches(1.0 / 16);
/// Up to `most_miss` it still is, unless a freer curve comes this many times closer.
constexpr double much_closer = 1.5;

bool good(const Misses& misses, Length freer) {
    const Length worst = misses.worst();
    return worst <= close || (worst <= most_miss && worst <= freer * much_closer);
}

/// The simplest answer that will do, for it is the easiest to lay out: an arc where its worst miss is at most 1/16 in,
/// or at most 1/8 in and at most 1.5 times that of the ellipse and of the fair curve; else an ellipse by the same rule
/// against the fair curve; else the fair curve.
job::Fit recommended(const Survey& survey) {
    // A fair curve can go through every point: what a point that it does not know lies off it is what it is worth.
    const Length fair = std::max(survey.fair.misses.worst(), survey.fair.left_out.worst());
    const Length freer = survey.ellipse ? std::min(fair, survey.ellipse->misses.worst()) : fair;
    if (survey.circle && good(survey.circle->misses, freer)) return job::Fit::arc;
    if (survey.ellipse && good(survey.ellipse->misses, fair)) return job::Fit::ellipse;
    return job::Fit::fair;
}

double cross(Point a, Point b) { return a.x.mm() * b.y.mm() - a.y.mm() * b.x.mm(); }

/// The job's end angles are against its base line; the points may stand turned and mirrored against what was written.
std::optional<std::array<Angle, 2>> end_angles(const std::vector<Point>& points, const job::Ordinates& ordinates) {
    if (!ordinates.end_angles) return std::nullopt;
    const auto written = [&](std::size_t i) {
        return Point{ordinates.points[i].station.value, ordinates.points[i].height.value};
    };
    const Point written_chord = written(points.size() - 1) - written(0);
    const Point chord = points.back() - points.front();
    double alike = 0;
    for (std::size_t i = 1; i + 1 < points.size(); ++i)
        alike += cross(written_chord, written(i) - written(0)) * cross(chord, points[i] - points.front());
    const double sense = alike < 0 ? -1 : 1;
    const auto angle = [](Point p) { return Angle::radians(std::atan2(p.y.mm(), p.x.mm())); };
    const auto here = [&](Angle end) { return angle(chord) + (end - angle(written_chord)) * sense; };
    return std::array{here((*ordinates.end_angles)[0].value), here((*ordinates.end_angles)[1].value)};
}

std::vector<Survey::Gap> gaps(const Survey& survey) {
    constexpr double most_turn = 25;  // degrees
    constexpr double most_left_out = 3;
    const FairFit& fair = survey.fair;
    const std::vector<Length> joints = fair.curve.joints();
    const auto doubtful = [&](std::size_t i) {
        return measure::abs(fair.left_out.at.at(i)) > survey.tape * most_left_out;
    };
    std::vector<Survey::Gap> found;
    for (std::size_t i = 0; i + 1 < joints.size(); ++i) {
        const Angle turn = fair.curve.at(joints[i + 1]).turned - fair.curve.at(joints[i]).turned;
        if (std::abs(turn.degrees()) > most_turn || doubtful(i) || doubtful(i + 1)) found.push_back({i, turn});
    }
    return found;
}

}  // namespace

const Misses& Survey::used_misses() const {
    if (used == job::Fit::arc && circle) return circle->misses;
    if (used == job::Fit::ellipse && ellipse) return ellipse->misses;
    return fair.misses;
}

Length to_hundredths(Length miss) { return Length::inches(std::round(std::abs(miss.inches()) * 100) / 100); }

Survey survey(const std::vector<Point>& points, const job::Ordinates& ordinates, Length least_radius) {
    Fairness fairness;
    fairness.miss = ordinates.tape;
    fairness.least_radius = least_radius;
    fairness.end_angles = end_angles(points, ordinates);
    std::vector<Length> stations;
    std::vector<Length> heights;
    for (const job::Ordinate& ordinate : ordinates.points) {
        stations.push_back(ordinate.station.value);
        heights.push_back(ordinate.height.value);
    }
    auto circle = fit_circle(points);
    auto ellipse = fit_ellipse(points);
    FairFit fair = fit_fair(points, fairness, circle, ellipse);
    Survey answers{points,
                   std::move(stations),
                   std::move(heights),
                   std::move(circle),
                   std::move(ellipse),
                   std::move(fair),
                   {},
                   {},
                   {},
                   ordinates.tape,
                   {}};
    answers.used = ordinates.fit ? ordinates.fit->value : job::Fit::fair;
    answers.recommended = recommended(answers);
    answers.suspect = find_suspect(points);
    answers.gaps = gaps(answers);
    return answers;
}

}  // namespace kerfpacket::curve
