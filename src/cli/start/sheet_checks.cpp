#include "cli/start/sheet_checks.h"

#include <cmath>
#include <optional>

#include "sheets/words/tape.h"

namespace kerfpacket::cli {
namespace {

using measure::Length;

/// The field sheet of a wall names it: 1/8 in, or 3 mm. Common practice, no source.
constexpr double tolerance_in = 0.125;

std::optional<Length> length_at(const SheetPage& page, std::string_view field) {
    const auto length = measure::parse_length(page.typed(field), page.unit());
    return length ? std::optional(*length) : std::nullopt;
}

bool apart(Length a, Length b) { return std::abs(a.inches() - b.inches()) > tolerance_in; }

class Checks {
public:
    Checks(const SheetPage& page, const fonts::Words& words) : page_(page), words_(words), tape_(page.unit(), words) {}

    /// From the floor at one side up to the spring at the other.
    void diagonal(std::string_view field, std::string_view leg) {
        const auto measured = length_at(page_, field), span = length_at(page_, "opening-span"),
                   up = length_at(page_, leg);
        if (!measured || !span || !up) return;
        const Length expected = Length::inches(std::hypot(span->inches(), up->inches()));
        if (apart(*measured, expected))
            all.push_back(words_("start.doubt_diagonal", {{"what", told(field)},
                                                          {"measured", tape_.with_unit(*measured)},
                                                          {"expected", tape_.with_unit(expected)}}));
    }

    void halves(std::string_view left, std::string_view right) {
        const auto a = length_at(page_, left), b = length_at(page_, right);
        if (a && b && apart(*a, *b))
            all.push_back(words_("start.doubt_halves", {{"left", told(left) + ": " + tape_.with_unit(*a)},
                                                        {"right", told(right) + ": " + tape_.with_unit(*b)}}));
    }

    std::vector<std::string> all;

private:
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
    // Springs at two heights make a head that is not the same on both sides.
    const auto left = length_at(page, "opening-leg-left"), right = length_at(page, "opening-leg-right");
    if (!left || !right || !apart(*left, *right)) checks.halves("opening-q1", "opening-q2");
    checks.halves("wall-h1", "wall-h2");
    return checks.all;
}

}  // namespace kerfpacket::cli
