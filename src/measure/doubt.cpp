#include "measure/doubt.h"

#include <algorithm>
#include <array>
#include <charconv>
#include <cmath>

namespace kerfpacket::measure {
namespace {

/// Figures of more digits are no measurement.
constexpr std::size_t most_digits = 15;
/// What tapes and rules are divided in.
constexpr std::array<int, 6> on_a_tape{2, 4, 8, 16, 32, 64};

double number(const std::string& text) {
    double value = 0;
    std::from_chars(text.data(), text.data() + text.size(), value);
    return value;
}

LengthError error(std::size_t at, std::string message, std::string hint = "") {
    return {std::move(message), at, std::move(hint)};
}

/// The digits with the separator at `keep` as the point, and no other.
std::string with_point(const std::string& text, std::size_t keep) {
    std::string plain;
    for (std::size_t i = 0; i < text.size(); ++i) {
        if (i == keep) plain += '.';
        else if (text[i] != '.' && text[i] != ',') plain += text[i];
    }
    return plain;
}

/// 1,250: a thousand and more, or a comma for the point.
bool in_thousands(const std::string& whole, const std::string& rest) {
    return rest.size() == 3 && !whole.empty() && whole.size() <= 3 && whole[0] != '0';
}

std::optional<LengthError> comma_doubt(const Digits& digits, const Around& around) {
    const std::size_t comma = digits.text.find(',');
    if (comma == std::string::npos) return {};
    const std::string whole = digits.text.substr(0, comma), rest = digits.text.substr(comma + 1);
    if (whole.empty() || rest.empty()) return error(digits.at, "a comma stands where no figure goes on");
    if (in_thousands(whole, rest))
        return two_ways(digits.at, around.with(whole + rest), around.with(whole + "." + rest));
    if (whole == "0")
        return error(digits.at, "a comma stands in the number",
                     "decimals have a point: write " + around.with("0." + rest));
    return two_ways(digits.at, around.with(whole + "." + rest),
                    around.with(whole) + " and " + around.with(rest) + " as two lengths");
}

std::optional<LengthError> digits_doubt(const Digits& digits, const Around& around) {
    const std::string& text = digits.text;
    const auto separator = [](char c) { return c == '.' || c == ','; };
    const auto points = std::count_if(text.begin(), text.end(), separator);
    if (static_cast<std::size_t>(points) == text.size()) return error(digits.at, "expected a number");
    const bool apart = std::adjacent_find(text.begin(), text.end(),
                                          [&](char a, char b) { return separator(a) && separator(b); }) == text.end();
    if (points > 1 && (!apart || separator(text.front()) || separator(text.back())))
        return error(digits.at, "points and commas stand here that make no number");
    if (points > 1)
        return two_ways(digits.at, around.with(with_point(text, text.find_last_of(".,"))),
                        around.with(with_point(text, text.find_first_of(".,"))));
    if (auto comma = comma_doubt(digits, around)) return comma;
    if (text.back() == '.')
        return error(digits.at + text.size(), "nothing stands behind the point",
                     "write " + around.with(text.substr(0, text.size() - 1)) + ", or the decimals");
    if (text.size() > most_digits) return error(digits.at, "the number is too large");
    const std::size_t point = text.find('.');
    if (around.millimetres && point != std::string::npos && text.back() == '0' &&
        in_thousands(text.substr(0, point), text.substr(point + 1)))
        return two_ways(digits.at, around.with(with_point(text, std::string::npos)),
                        around.with(figure_text(number(text), true)));
    return {};
}

bool whole_number(const Digits& digits) { return digits.text.find('.') == std::string::npos; }
double quotient(const Figure& figure) { return number(figure.top.text) / number(figure.bottom.text); }

std::string fraction(const std::string& whole, const std::string& top, const std::string& bottom) {
    return (whole.empty() ? "" : whole + "-") + top + "/" + bottom;
}

/// 60.1/2, 5.5-1/2, 1/2.5.
LengthError point_in_fraction(const Figure& figure, const Around& around) {
    const bool metric = around.metric;
    const auto& [whole, top, bottom, join] = figure;
    const auto before_point = [](const Digits& digits) { return digits.text.substr(0, digits.text.find('.')); };
    if (whole.given() && !whole_number(whole)) {
        const std::string cut = before_point(whole);
        return two_ways(whole.at, around.with(figure_text(number(whole.text) + quotient(figure), metric)),
                        around.with(fraction(cut, top.text, bottom.text)));
    }
    const double sum = (whole.given() ? number(whole.text) : 0) + quotient(figure);
    const std::string exact = around.with(figure_text(sum, true));
    if (!whole_number(top) && !whole.given()) {
        // The point may stand where a dash or a space belongs.
        const std::string rest = top.text.substr(top.text.find('.') + 1);
        if (number(rest) < number(bottom.text) && number(rest) > 0)
            return two_ways(top.at, around.with(fraction(before_point(top), rest, bottom.text)), exact);
        return two_ways(top.at, around.with(top.text), exact);
    }
    const Digits& odd = whole_number(top) ? bottom : top;
    const std::string mended = &odd == &bottom ? fraction(whole.text, top.text, before_point(bottom))
                                               : fraction(whole.text, before_point(top), bottom.text);
    return two_ways(odd.at, around.with(mended), exact);
}

std::string nearest_on_a_tape(int bottom, double least) {
    int nearest = 64;
    for (const int marks : on_a_tape)
        if (marks > least && std::abs(marks - bottom) <= std::abs(nearest - bottom)) nearest = marks;
    return std::to_string(nearest);
}

/// 5 3/2, 58/4, 123/4.
LengthError top_heavy(const Figure& figure, const Around& around) {
    const auto& [whole, top, bottom, join] = figure;
    const double over = quotient(figure);
    if (whole.given())
        return two_ways(top.at, around.with(figure_text(number(whole.text) + over, around.metric)),
                        around.with(figure_text(number(whole.text + top.text) / number(bottom.text), around.metric)));
    const std::string divided = around.with(figure_text(over, around.metric));
    for (std::size_t k = 1; k < top.text.size(); ++k) {
        const std::string rest = top.text.substr(k);
        if (rest[0] != '0' && number(rest) < number(bottom.text))
            return two_ways(top.at, around.with(fraction(top.text.substr(0, k), rest, bottom.text)), divided);
    }
    return two_ways(top.at, divided, around.with(fraction(top.text, "1", bottom.text)));
}

std::optional<LengthError> fraction_doubt(const Figure& figure, const Around& around) {
    const auto& [whole, top, bottom, join] = figure;
    if (number(bottom.text) == 0) return error(bottom.at, "expected a number other than 0 under the fraction line");
    if (number(top.text) == 0) return error(top.at, "expected a number other than 0 over the fraction line");
    if (!whole_number(top) || !whole_number(bottom) || (whole.given() && !whole_number(whole)))
        return point_in_fraction(figure, around);
    if (top.text[0] == '0' || bottom.text[0] == '0') return error(top.at, "a fraction does not begin with 0");
    const double base = whole.given() ? number(whole.text) : 0;
    const double sum = base + quotient(figure);
    if (join == Join::loose_dash)
        return two_ways(top.at, around.with(fraction(whole.text, top.text, bottom.text)),
                        around.with(figure_text(base - quotient(figure), around.metric)));
    if (around.metric)
        return two_ways(top.at, around.with(figure_text(sum, true)),
                        "\"" + around.before + fraction(whole.text, top.text, bottom.text) + " in\"");
    const double marks = number(bottom.text);
    if (std::find(on_a_tape.begin(), on_a_tape.end(), marks) == on_a_tape.end()) {
        const std::string on_tape = nearest_on_a_tape(static_cast<int>(std::min(marks, 1000.0)), number(top.text));
        return two_ways(
            top.at, around.with(figure_text(sum, true)),
            around.with(number(top.text) < number(on_tape) ? fraction(whole.text, top.text, on_tape) : top.text));
    }
    if (number(top.text) >= marks) return top_heavy(figure, around);
    return {};
}

}  // namespace

LengthError two_ways(std::size_t at, const std::string& one, const std::string& other) {
    if (one == other) return error(at, "no tape shows such a figure", "write " + one + " if that is meant");
    return error(at, "this can be read in two ways", "write " + one + ", or " + other + ", whichever is meant");
}

std::string figure_text(double value, bool metric) {
    if (!metric && is_inch_fraction(Length::inches(value), 64)) return inch_fraction(Length::inches(value), 64);
    std::string text = fixed(value, 4);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.')) text.pop_back();
    return text;
}

std::optional<LengthError> doubt(const Figure& figure, const Around& around) {
    for (const Digits* digits : {&figure.whole, &figure.top, &figure.bottom})
        if (digits->given())
            if (auto found = digits_doubt(*digits, around)) return found;
    return figure.fraction() ? fraction_doubt(figure, around) : std::nullopt;
}

double value_of(const Figure& figure) {
    const double whole = figure.whole.given() ? number(figure.whole.text) : 0;
    return figure.fraction() ? whole + quotient(figure) : whole;
}

}  // namespace kerfpacket::measure
