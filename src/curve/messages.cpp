#include "curve/messages.h"

#include <cmath>

namespace kerfpacket::curve {
namespace {

using geom::Length;

/// What binary fractions leave of a figure that is itself a whole number of steps.
constexpr double hair = 1e-6;

Length step_of(measure::Unit units) { return units == measure::Unit::inch ? Length::inches(0.001) : Length::mm(0.01); }

}  // namespace

std::string shown_above(Length limit, measure::Unit units) {
    const Length step = step_of(units);
    return measure::length_text(step * std::floor(limit / step + 1 + hair), units);
}

std::string shown_below(Length limit, measure::Unit units) {
    const Length step = step_of(units);
    return measure::length_text(step * std::ceil(limit / step - 1 - hair), units);
}

std::string shown_at_most(Length limit, measure::Unit units) {
    const Length step = step_of(units);
    return measure::length_text(step * std::floor(limit / step + hair), units);
}

tl::unexpected<job::Diagnostics> refused(job::Position at, std::string message, std::string hint) {
    return tl::unexpected(job::Diagnostics{{job::Severity::error, at, std::move(message), std::move(hint)}});
}

}  // namespace kerfpacket::curve
