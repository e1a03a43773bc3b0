#include "sheets/tape.h"

#include <cmath>

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

std::string Tape::plain(Length value) const {
    return unit_ == Unit::inch ? measure::inch_fraction(value) : measure::mm_text(value, 0);
}

std::string Tape::with_unit(Length value) const { return plain(value) + " " + unit_name(); }

Length Tape::rounded(Length value) const {
    return unit_ == Unit::inch ? measure::round_to_inch_fraction(value, 16) : Length::mm(std::round(value.mm()));
}

std::string Tape::exact_plain(Length value) const {
    if (unit_ == Unit::millimetre) return shortest(value.mm(), 2);
    return measure::is_inch_fraction(value, 64) ? measure::inch_fraction(value, 64) : shortest(value.inches(), 4);
}

std::string Tape::exact(Length value) const { return exact_plain(value) + " " + unit_name(); }

std::string Tape::other(Length value) const {
    return unit_ == Unit::inch ? measure::mm_text(value, 1) : measure::fixed(value.inches(), 3);
}

}  // namespace kerfpacket::sheets
