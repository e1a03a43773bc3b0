#include "curve/messages.h"

#include <cmath>

#include "job/choices.h"

namespace kerfpacket::curve {
namespace {

using geom::Length;

/// What binary fractions leave of a figure that is itself a whole number of steps.
constexpr double hair = 1e-6;

Length step_of(measure::Unit units) { return units == measure::Unit::inch ? Length::inches(0.001) : Length::mm(0.01); }

}  // namespace

job::Told shape_word(std::string_view shape) {
    // A sentence spells as the sheets do, whatever the job file's word.
    return job::word(job::shape_key(shape), shape == "three-centred" ? "three-centered" : std::string(shape));
}

job::Told shown_above(Length limit, measure::Unit units) {
    const Length step = step_of(units);
    return job::shown(step * std::floor(limit / step + 1 + hair), units);
}

job::Told shown_below(Length limit, measure::Unit units) {
    const Length step = step_of(units);
    return job::shown(step * std::ceil(limit / step - 1 - hair), units);
}

job::Told shown_at_most(Length limit, measure::Unit units) {
    const Length step = step_of(units);
    return job::shown(step * std::floor(limit / step + hair), units);
}

job::Told rise_more(const job::Told& rise, std::string_view shape) {
    return job::say("rise_more", "rise {rise} is more than a {shape} head over this span can have",
                    {{"rise", rise}, {"shape", shape_word(shape)}});
}

job::Told rise_much(const job::Told& rise, std::string_view shape) {
    return job::say("rise_much", "rise {rise} is too much for a {shape} head over this span",
                    {{"rise", rise}, {"shape", shape_word(shape)}});
}

job::Told rise_less(const job::Told& rise, std::string_view shape) {
    return job::say("rise_less", "rise {rise} is too little for a {shape} head over this span",
                    {{"rise", rise}, {"shape", shape_word(shape)}});
}

tl::unexpected<job::Diagnostics> refused(job::Position at, job::Told message, job::Told hint) {
    return tl::unexpected(job::Diagnostics{{job::Severity::error, at, std::move(message), std::move(hint)}});
}

}  // namespace kerfpacket::curve
