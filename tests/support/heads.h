#pragma once
// Heads of openings for tests: the bare shape, with lines for messages to point at.

#include <stdexcept>
#include <string>

#include "curve/shape.h"
#include "support/jobs.h"

namespace kerfpacket::tests {

// Lines of the figures in the openings below.
inline constexpr int rise_line = 24;
inline constexpr int legs_line = 25;
inline constexpr int radius_line = 26;
inline constexpr int second_radius_line = 27;
inline constexpr int fit_line = 28;

inline job::Opening opening_of(job::Shape shape, measure::Length span, measure::Length rise) {
    job::Opening opening = lantern_court();
    opening.shape.value = shape;
    opening.span.value = span;
    opening.rise = at_line(rise, rise_line);
    return opening;
}

/// A shape that takes its rise from its other figures.
inline job::Opening opening_without_rise(job::Shape shape, measure::Length span) {
    job::Opening opening = opening_of(shape, span, {});
    opening.rise.at = {};
    return opening;
}

inline job::Opening on_legs(job::Opening opening, measure::Length left, measure::Length right) {
    opening.legs = {{at_line(left, legs_line), at_line(right, legs_line)}};
    return opening;
}

inline std::string told(const job::Diagnostics& wrong) {
    std::string text;
    for (const job::Diagnostic& d : wrong) text += std::to_string(d.at.line) + ": " + d.message + " | " + d.hint + "\n";
    return text;
}

inline curve::Head head_of(const job::Opening& opening) {
    auto head = curve::head(opening, measure::Unit::inch);
    if (!head) throw std::runtime_error(told(head.error()));
    return std::move(*head);
}

/// What is told of an opening that cannot be; empty when it can.
inline std::string refusal(const job::Opening& opening, measure::Unit units = measure::Unit::inch) {
    const auto head = curve::head(opening, units);
    return head ? "" : told(head.error());
}

/// Runs between the legs.
inline std::vector<curve::Curve> arch_of(const curve::Head& head) {
    const auto& runs = head.outline.runs();
    return {runs.begin() + 1, runs.end() - 1};
}

inline measure::Length arch_length(const curve::Head& head) {
    measure::Length length;
    for (const curve::Curve& run : arch_of(head)) length += run.length();
    return length;
}

}  // namespace kerfpacket::tests
