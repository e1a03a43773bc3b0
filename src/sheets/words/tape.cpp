#include "sheets/words/tape.h"

#include <cmath>

#include "measure/require.h"
#include "sheets/words/job_length.h"

namespace kerfpacket::sheets {
namespace {

/// Decimals without trailing zeros: 19.050 -> 19.05, 18.00 -> 18.
std::string shortest(double value, int places) {
    std::string text = measure::fixed(value, places);
    if (text.find('.') == std::string::npos) return text;
    text.erase(text.find_last_not_of('0') + 1);
    if (text.back() == '.') text.pop_back();
    return text;
}

}  // namespace

std::string with_decimal(std::string figures, std::string_view mark) {
    for (std::size_t point = 0; (point = figures.find('.', point)) != std::string::npos; point += mark.size())
        figures.replace(point, 1, mark);
    return figures;
}

std::string number(double value, int places, const fonts::Words& words) {
    return with_decimal(measure::fixed(value, places), words("numbers.decimal"));
}

std::string shortest(double value, const fonts::Words& words) {
    std::string text = measure::fixed(value, 9);
    text.erase(text.find_last_not_of('0') + 1);
    if (text.ends_with('.')) text.pop_back();
    return with_decimal(text, words("numbers.decimal"));
}

std::string date_text(const std::string& day, const fonts::Words& words) {
    if (day.empty()) return day;
    measure::require(day.size() == 10 && day[4] == '-' && day[7] == '-', "a job's date is YYYY-MM-DD");
    const auto month = static_cast<std::size_t>(std::stoi(day.substr(5, 2)));
    return words("numbers.date", {{"day", std::to_string(std::stoi(day.substr(8)))},
                                  {"month", words.list("numbers.months").at(month - 1)},
                                  {"year", day.substr(0, 4)}});
}

std::string Tape::plain(Length value) const {
    return unit_ == Unit::inch ? measure::inch_fraction(value) : measure::mm_text(rounded(value), 0);
}

std::string Tape::with_unit(Length value) const { return plain(value) + " " + unit_name(); }

Length Tape::rounded(Length value) const { return measure::round_to_tape(value, unit_); }

std::string Tape::exact_plain(Length value) const {
    if (unit_ == Unit::millimetre) return with_decimal(shortest(value.mm(), 2), decimal_);
    return measure::is_inch_fraction(value, 64) ? measure::inch_fraction(value, 64)
                                                : with_decimal(shortest(value.inches(), 4), decimal_);
}

std::string Tape::exact(Length value) const { return exact_plain(value) + " " + unit_name(); }

std::string Tape::other(Length value) const {
    return unit_ == Unit::inch ? number(value.mm(), 1) : number(value.inches(), 3);
}

std::string Tape::number(double value, int places) const {
    return with_decimal(measure::fixed(value, places), decimal_);
}

std::string job_length(Length value, Unit unit) { return measure::length_text(value, unit); }

}  // namespace kerfpacket::sheets
