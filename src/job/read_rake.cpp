#include <cmath>

#include "job/choices.h"
#include "job/tables.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

const LengthKey step{"rake", finest, 60_in, R"(["7-1/2 in", "10 in"])"};

/// Flatter than any stair, and steeper: a slip, or a ladder.
constexpr double least_degrees = 1;
constexpr double most_degrees = 60;

constexpr std::string_view takes_rake =
    "rise and run of one step, or an angle in degrees, for example "
    R"(rake = ["7-1/2 in", "10 in"] or rake = 36.9)";

std::optional<decltype(Rake::slope)> read_step(Context& context, const toml::array& list, Position at) {
    if (list.size() != 2) {
        context.error(at, "rake must be two lengths in square brackets: rise, run",
                      "expected " + std::string(takes_rake));
        return std::nullopt;
    }
    LengthKey part = step;
    part.name = "a length in rake";
    const auto rise = context.length(list[0], part);
    const auto run = context.length(list[1], part);
    if (!rise || !run) return std::nullopt;
    return std::array{*rise, *run};
}

std::optional<decltype(Rake::slope)> read_slope(Context& context, const toml::node& node) {
    if (const auto* list = node.as_array()) return read_step(context, *list, position(node));
    const auto angle = context.angle(node, "rake");
    if (!angle) return std::nullopt;
    return *angle;
}

/// The slope is one that a board can have.
bool check_slope(Context& context, const Rake& rake) {
    const double degrees = std::atan(rake.steepness()) * 180 / M_PI;
    if (degrees >= least_degrees && degrees <= most_degrees) return true;
    context.error(rake.at,
                  degrees < least_degrees ? "this board hardly climbs at all" : "this board climbs like a ladder",
                  "expected a slope of 1 to 60 degrees: " + std::string(takes_rake));
    return false;
}

}  // namespace

double Rake::steepness() const {
    if (const auto* angle = std::get_if<Sourced<Angle>>(&slope)) return std::tan(angle->value.radians());
    const auto& [rise, run] = std::get<std::array<Sourced<Length>, 2>>(slope);
    return rise.value / run.value;
}

std::optional<Rake> read_rake(Context& context, TableReader& reader) {
    const auto* node = reader.find("rake", Need::optional, step.example, {Takes::Kind::step_or_angle});
    const auto climbs = reader.choice<End>("climbs", {{"right", End::right}, {"left", End::left}});
    const auto ends = reader.one_or_two_words<EndCut>("ends", end_cut_words());
    if (node == nullptr) {
        for (const std::string_view key : {"climbs", "ends"})
            if (reader.has(key) && !reader.has("rake"))
                context.harmless_error(reader.at_name(key), std::string(key) + " is given without rake",
                                       "a board climbs at a slope: " + std::string(takes_rake));
        return std::nullopt;
    }
    if (!reader.has("climbs"))
        reader.missing({"climbs"}, "this board climbs, and to which side is not said",
                       R"(as seen from the room: climbs = "right" or "left")");
    auto slope = read_slope(context, *node);
    if (!slope) return std::nullopt;
    Rake rake{*slope, climbs, ends.value_or(std::array{EndCut::plumb, EndCut::plumb}), position(*node)};
    if (!check_slope(context, rake)) return std::nullopt;
    return rake;
}

}  // namespace kerfpacket::job
