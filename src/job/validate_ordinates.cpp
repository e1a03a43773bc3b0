// What measured points cannot be, whatever is drawn through them.
#include <algorithm>

#include "job/validate.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

/// Rounding between units makes no difference between two stations, and no curve.
constexpr Length slack = 0.001_mm;
constexpr Length least_width = 1_in;
constexpr std::size_t least_points = 3;
/// An ellipse with level axes has four figures to find; with four points it would go through all of them, right or not.
constexpr std::size_t least_points_of_ellipse = 5;

bool all_known(const std::vector<Ordinate>& points) {
    return std::all_of(points.begin(), points.end(), [](const auto& p) { return known(p.station) && known(p.height); });
}

bool are_enough(Context& context, const Ordinates& ordinates) {
    const std::size_t count = ordinates.points.size();
    const bool ellipse = ordinates.fit && ordinates.fit->value == Fit::ellipse;
    const std::string has = "ordinates has only " + std::to_string(count) + (count == 1 ? " point" : " points");
    if (count < least_points)
        context.error(ordinates.at, has, "a curve needs at least three: its two ends and one between");
    else if (ellipse && count < least_points_of_ellipse)
        context.error(ordinates.fit->at, has, "an ellipse needs at least five to be told from other curves");
    return count >= least_points;
}

void check_width(Context& context, const Ordinates& ordinates) {
    const Length width = ordinates.points.back().station.value - ordinates.points.front().station.value;
    if (width < least_width - slack)
        context.error(ordinates.at, "the stations reach over only " + context.shown(width),
                      "expected at least " + context.shown(least_width) + " from the first to the last");
    else if (width > longest)
        context.error(ordinates.at, "the stations reach further than any board or wall this program takes",
                      "expected at most 1000 ft, which is 304.8 m");
}

/// Height of the line from the first point to the last, at a station.
Length straight_height(const std::vector<Ordinate>& points, Length station) {
    const Ordinate& a = points.front();
    const Ordinate& b = points.back();
    const double part = (station - a.station.value) / (b.station.value - a.station.value);
    return a.height.value + (b.height.value - a.height.value) * part;
}

void check_bulge(Context& context, const Ordinates& ordinates) {
    const auto& points = ordinates.points;
    const bool straight = std::all_of(points.begin(), points.end(), [&](const Ordinate& p) {
        return abs(p.height.value - straight_height(points, p.station.value)) <= slack;
    });
    if (straight)
        context.error(ordinates.at, "the ordinates lie in one straight line, which is no curve",
                      "expected at least one height off the line from the first point to the last");
}

}  // namespace

bool check_rising(Context& context, const std::vector<Sourced<Length>>& stations) {
    bool rising = true;
    for (std::size_t i = 1; i < stations.size(); ++i) {
        const auto& before = stations[i - 1];
        const auto& here = stations[i];
        if (!known(before) || !known(here) || here.value > before.value + slack) continue;
        rising = false;
        const std::string station = "station " + context.as_written(here);
        if (here.value >= before.value - slack)
            context.error(here.at, station + " is given twice", "the one before it is the same distance from the end");
        else
            context.error(here.at, station + " comes after " + context.as_written(before),
                          "stations go from left to right: expected each to be more than the one before it");
    }
    return rising;
}

void check_ordinates(Context& context, const Ordinates& ordinates) {
    std::vector<Sourced<Length>> stations;
    stations.reserve(ordinates.points.size());
    for (const auto& point : ordinates.points) stations.push_back(point.station);
    const bool rising = check_rising(context, stations);
    if (!are_enough(context, ordinates) || !rising || !all_known(ordinates.points)) return;
    check_width(context, ordinates);
    check_bulge(context, ordinates);
}

}  // namespace kerfpacket::job
