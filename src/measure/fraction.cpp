#include "measure/fraction.h"

#include <array>
#include <charconv>
#include <cmath>
#include <numeric>

namespace kerfpacket::measure {
double nearest(double value) { return std::round(value + std::copysign(1e-9, value)); }

Length round_to_inch_fraction(Length value, int denominator) {
    return Length::inches(nearest(value.inches() * denominator) / denominator);
}

Length round_to_tape(Length value, Unit unit) {
    return unit == Unit::inch ? round_to_inch_fraction(value, 16) : Length::mm(nearest(value.mm()));
}

Length up_to_tape(Length value, Unit unit) {
    const Length step = unit == Unit::inch ? Length::inches(1.0 / 16) : Length::mm(1);
    return step * std::ceil(value / step - 1e-6);
}

std::string inch_fraction(Length value, int denominator) {
    const double rounded = nearest(value.inches() * denominator);
    // More than this a double does not tell apart, and a whole number may not hold: no measurement is as long.
    if (!(std::abs(rounded) < 9e15)) return fixed(value.inches(), 0);
    const auto parts = static_cast<long long>(rounded);
    const long long size = std::llabs(parts);
    const long long whole = size / denominator;
    const long long rest = size % denominator;
    std::string text = parts < 0 ? "-" : "";
    if (rest == 0) return text + std::to_string(whole);
    const long long divisor = std::gcd(rest, static_cast<long long>(denominator));
    if (whole != 0) text += std::to_string(whole) + "-";
    return text + std::to_string(rest / divisor) + "/" + std::to_string(denominator / divisor);
}

bool is_inch_fraction(Length value, int denominator) {
    return std::abs((value - round_to_inch_fraction(value, denominator)).inches()) < 1e-6;
}

std::string inch_text(Length value, int places) {
    return is_inch_fraction(value, 64) ? inch_fraction(value, 64) : fixed(value.inches(), places);
}

std::string mm_text(Length value, int places) { return fixed(value.mm(), places); }

std::string fixed(double value, int places) {
    std::array<char, 400> buffer{};
    // The library takes an exact half to the even digit; a hair further out it is no half any more.
    value = std::nextafter(value, std::copysign(HUGE_VAL, value));
    const auto [end, error] =
        std::to_chars(buffer.data(), buffer.data() + buffer.size(), value, std::chars_format::fixed, places);
    if (error != std::errc{}) return "?";
    std::string text(buffer.data(), end);
    if (text.find_first_not_of("-0.") == std::string::npos && text.front() == '-') text.erase(0, 1);
    return text;
}

std::string length_text(Length value, Unit unit) {
    if (unit == Unit::inch) return inch_text(value) + " in";
    const bool whole = std::abs(value.mm() - std::round(value.mm())) < 0.005;
    return mm_text(value, whole ? 0 : 2) + " mm";
}

}  // namespace kerfpacket::measure
