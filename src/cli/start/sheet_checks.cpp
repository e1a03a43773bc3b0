#include "cli/start/sheet_checks.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

#include "curve/shape.h"
#include "geom/path.h"
#include "job/choices.h"
#include "sheets/words/tape.h"

namespace kerfpacket::cli {
namespace {

using measure::Length;

/// The field sheet of a wall names it: 1/8 in, or 3 mm. Common practice, no source.
constexpr Length tolerance = Length::inches(0.125);
/// Of what is made of two figures, each of them measured: twice that.
constexpr Length tolerance_of_curve = tolerance * 2;

bool apart(Length a, Length b, Length by = tolerance) { return measure::abs(a - b) > by; }

/// How high a head of this shape stands over the line of its springs, a quarter of the span from either. None where
/// there is no such head.
std::optional<Length> quarter_height(job::Shape shape, Length span, Length rise) {
    job::Opening opening;
    opening.shape.value = shape;
    opening.span.value = span;
    opening.rise.value = rise;
    const auto head = curve::head(opening, measure::Unit::inch);
    if (!head) return {};
    std::optional<Length> highest;
    for (const geom::Path& run : head->outline.parallel({}))
        if (const auto height = geom::height_over(run, span / 4))
            highest = std::max(*height, highest.value_or(*height));
    return highest;
}

class Checks {
public:
    Checks(const SheetPage& page, const fonts::Words& words) : page_(page), words_(words), tape_(page.unit(), words) {}

    /// What stands in a blank, where it is a length.
    std::optional<Length> at(std::string_view field) const {
        const auto length = measure::parse_length(page_.typed(field), page_.unit());
        return length ? std::optional(*length) : std::nullopt;
    }

    /// From the floor at one side up to the spring at the other.
    void diagonal(std::string_view field, std::string_view leg) {
        const auto measured = at(field), span = at("opening-span"), up = at(leg);
        if (!measured || !span || !up) return;
        const Length expected = Length::mm(std::hypot(span->mm(), up->mm()));
        if (apart(*measured, expected)) say("start.doubt_diagonal", field, *measured, expected);
    }

    void halves(std::string_view left, std::string_view right) {
        const auto a = at(left), b = at(right);
        if (a && b && apart(*a, *b))
            all.push_back(words_("start.doubt_halves", {{"left", told(left) + ": " + tape_.with_unit(*a)},
                                                        {"right", told(right) + ": " + tape_.with_unit(*b)}}));
    }

    /// The board is ripped to what was measured at the crown.
    void depth(std::string_view field) {
        const auto here = at(field), crown = at("opening-depth");
        if (here && crown && apart(*here, *crown)) say("start.doubt_depth", field, *here, *crown);
    }

    /// Span, rise and the heights at the quarters are those of the shape that was ticked.
    void head() {
        const auto& shapes = job::shape_words();
        const auto ticked = std::find_if(shapes.begin(), shapes.end(),
                                         [&](const auto& one) { return one.first == page_.typed("opening-shape"); });
        const auto span = at("opening-span"), rise = at("opening-rise");
        if (ticked == shapes.end() || !span || *span <= Length{}) return;
        const bool half_circle = ticked->second == job::Shape::semicircular;
        if (half_circle && rise && apart(*rise, *span / 2))
            return say("start.doubt_half_circle", "opening-rise", *rise, *span / 2);
        if (half_circle || (rise && *rise > Length{})) quarters(*ticked, *span, half_circle ? *span / 2 : *rise);
    }

    /// A string from each end to the middle of the wall: what the arc of chord and rise stands off its middle.
    void half_walls() {
        const auto chord = at("wall-chord"), rise = at("wall-rise");
        if (!chord || !rise || *chord <= Length{} || *rise <= Length{}) return;
        const Length radius = curve::radius_from_chord(*chord, *rise);
        const Length string = Length::mm(std::hypot(chord->mm() / 2, rise->mm()));
        const Length expected = radius - Length::mm(std::sqrt(std::pow(radius.mm(), 2) - std::pow(string.mm() / 2, 2)));
        for (const std::string_view field : {"wall-h1", "wall-h2"})
            if (const auto measured = at(field); measured && apart(*measured, expected, tolerance_of_curve))
                say("start.doubt_half_wall", field, *measured, expected);
        // By the rise that it makes: a flat arc's radius changes by feet with a sixteenth of the rise.
        const auto typed = at("wall-radius");
        if (!typed) return;
        const bool reaches = *typed * 2 >= *chord;
        const double middle = reaches ? std::sqrt(std::pow(typed->mm(), 2) - std::pow(chord->mm() / 2, 2)) : 0;
        // Less than a half circle, or more.
        const bool fits = reaches && (!apart(*typed - Length::mm(middle), *rise, tolerance_of_curve) ||
                                      !apart(*typed + Length::mm(middle), *rise, tolerance_of_curve));
        if (!fits) say("start.doubt_radius", "wall-radius", *typed, radius);
    }

    std::vector<std::string> all;

private:
    void quarters(const std::pair<std::string_view, job::Shape>& ticked, Length span, Length rise) {
        const std::optional<Length> expected = quarter_height(ticked.second, span, rise);
        constexpr std::array<std::string_view, 2> fields{"opening-q1", "opening-q2"};
        const auto off = [&](std::string_view field, Length height) {
            const auto measured = at(field);
            return measured && apart(*measured, height, tolerance_of_curve);
        };
        if (!expected || std::none_of(fields.begin(), fields.end(), [&](auto one) { return off(one, *expected); }))
            return;
        for (const std::string_view field : fields)
            if (off(field, *expected))
                all.push_back(words_("start.doubt_quarter", {{"what", told(field)},
                                                             {"measured", tape_.with_unit(*at(field))},
                                                             {"shape", words_(job::shape_key(ticked.first))},
                                                             {"expected", tape_.with_unit(*expected)}}));
        for (const auto& other : job::shape_words()) {
            const bool half_circle = other.second == job::Shape::semicircular;
            if (other == ticked || other.second == job::Shape::ordinates) continue;
            if (half_circle && apart(rise, span / 2)) continue;
            const auto height = quarter_height(other.second, span, rise);
            if (!height || std::any_of(fields.begin(), fields.end(), [&](auto one) { return off(one, *height); }))
                continue;
            all.push_back(words_("start.doubt_other_head", {{"shape", words_(job::shape_key(other.first))},
                                                            {"expected", tape_.with_unit(*height)}}));
            return;
        }
    }

    void say(const char* key, std::string_view field, Length measured, Length expected) {
        all.push_back(words_(
            key,
            {{"what", told(field)}, {"measured", tape_.with_unit(measured)}, {"expected", tape_.with_unit(expected)}}));
    }

    std::string told(std::string_view field) const {
        for (const SheetBlank& blank : page_.blanks)
            if (blank.field == field) return blank.told;
        return std::string(field);
    }

    const SheetPage& page_;
    const fonts::Words& words_;
    sheets::Tape tape_;
};

}  // namespace

std::vector<std::string> sheet_doubts(const SheetPage& page, const fonts::Words& words) {
    Checks checks(page, words);
    checks.diagonal("opening-d1", "opening-leg-right");
    checks.diagonal("opening-d2", "opening-leg-left");
    // Springs at two heights make a head that is not the same on both sides, and no line to measure it from.
    const auto left = checks.at("opening-leg-left"), right = checks.at("opening-leg-right");
    if (!left || !right || !apart(*left, *right)) {
        checks.halves("opening-q1", "opening-q2");
        checks.head();
    }
    checks.depth("opening-depth-left");
    checks.depth("opening-depth-right");
    checks.halves("wall-h1", "wall-h2");
    checks.half_walls();
    return checks.all;
}

}  // namespace kerfpacket::cli
