// The casing and the bending form.
#include <cmath>

#include "job/validate.h"

namespace kerfpacket::job {
namespace {

using namespace measure::literals;

/// Rounding between units must not turn an exact fit into a mistake.
constexpr Length slack = 0.001_mm;
/// A table that a person lays out with a tape is far shorter.
constexpr int most_rows = 1000;

/// At least `value`, as one reads it off a tape.
Length rounded_up(Length value, const std::optional<Unit>& unit) {
    if (unit == Unit::millimetre) return Length::mm(std::ceil(value.mm()));
    return Length::inches(std::ceil(value.inches() * 8) / 8);
}

}  // namespace

void check_casing(Context& context, const Casing& casing) {
    if (!casing.board || !known(casing.width) || casing.board->value > casing.width.value + slack) return;
    const std::string width = context.shown(casing.width.value);
    context.error(casing.board->at,
                  "board " + context.shown(casing.board->value) + " is no wider than the casing, " + width,
                  "a curved segment takes more than its own width: expected more than " + width);
}

void check_form(Context& context, const Form& form, std::optional<Length> width) {
    check_rising(context, form.stations);
    if (form.stations.size() > most_rows)
        context.error(form.stations[most_rows].at, "the form has more than 1000 stations", "expected at most 1000");
    if (form.below && !form.ribs)
        context.error(form.below->at, "below tells how large the ribs are sawn, and they are not counted",
                      "expected ribs beside it, the number of them");
    if (!form.step || !width || *width / form.step->value <= most_rows) return;
    context.error(form.step->at, "step " + context.shown(form.step->value) + " gives more than 1000 ordinates",
                  "the curve is about " + context.shown(*width) + " wide: expected at least " +
                      context.shown(rounded_up(*width / most_rows, context.unit)));
}

std::optional<Length> width_of(const Wall& wall) {
    if (wall.chord) return wall.chord->value;
    if (wall.radius && wall.angle) return 2 * wall.radius->value * std::sin(wall.angle->value.radians() / 2);
    if (!wall.ordinates || wall.ordinates->points.empty()) return std::nullopt;
    const auto& points = wall.ordinates->points;
    if (!known(points.front().station) || !known(points.back().station)) return std::nullopt;
    return points.back().station.value - points.front().station.value;
}

}  // namespace kerfpacket::job
