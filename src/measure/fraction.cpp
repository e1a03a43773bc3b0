#include "measure/fraction.h"

#include <array>
#include <charconv>
#include <cmath>
#include <numeric>
#include <optional>

namespace kerfpacket::measure {
namespace {

/// Reads the text from left to right; every step either moves on or says where it stopped.
class Reader {
public:
    explicit Reader(std::string_view text) : text_(text) {}

    std::size_t offset() const { return at_; }
    bool done() {
        skip_space();
        return at_ == text_.size();
    }

    bool take(std::string_view word) {
        skip_space();
        if (text_.substr(at_, word.size()) != word) return false;
        at_ += word.size();
        return true;
    }

    /// A unit word, not followed by another letter ("in" but not the start of "inside").
    bool take_word(std::string_view word) {
        const std::size_t before = at_;
        if (!take(word)) return false;
        if (at_ < text_.size() && std::isalpha(static_cast<unsigned char>(text_[at_])) != 0) {
            at_ = before;
            return false;
        }
        return true;
    }

    std::optional<double> number() {
        skip_space();
        double value = 0;
        const char* begin = text_.data() + at_;
        // A sign or a letter ("nan", "inf") is not a number here; from_chars alone would take them.
        if (at_ == text_.size() || (!is_digit(text_[at_]) && text_[at_] != '.')) return std::nullopt;
        const auto [end, error] = std::from_chars(begin, text_.data() + text_.size(), value);
        if (error == std::errc::result_out_of_range) value = HUGE_VAL;
        else if (error != std::errc{}) return std::nullopt;
        at_ += static_cast<std::size_t>(end - begin);
        return value;
    }

    bool next_is_digit() {
        skip_space();
        return at_ < text_.size() && is_digit(text_[at_]);
    }

private:
    static bool is_digit(char c) { return c >= '0' && c <= '9'; }
    void skip_space() {
        while (at_ < text_.size() && (text_[at_] == ' ' || text_[at_] == '\t')) ++at_;
    }

    std::string_view text_;
    std::size_t at_ = 0;
};

tl::unexpected<LengthError> error_at(Reader& reader, std::string message) {
    return tl::unexpected(LengthError{std::move(message), reader.offset()});
}

enum class Suffix { none, feet, inches, millimetres, centimetres, metres };

Suffix take_suffix(Reader& reader) {
    if (reader.take_word("feet") || reader.take_word("foot") || reader.take_word("ft")) return Suffix::feet;
    if (reader.take_word("inches") || reader.take_word("inch") || reader.take_word("in")) return Suffix::inches;
    if (reader.take_word("mm")) return Suffix::millimetres;
    if (reader.take_word("cm")) return Suffix::centimetres;
    if (reader.take_word("m")) return Suffix::metres;
    if (reader.take("\xE2\x80\xB2") || reader.take("\xE2\x80\x99")) return Suffix::feet;    // prime, quote
    if (reader.take("\xE2\x80\xB3") || reader.take("\xE2\x80\x9D")) return Suffix::inches;  // double prime, quote
    if (reader.take("''") || reader.take("\"")) return Suffix::inches;
    if (reader.take("'")) return Suffix::feet;
    return Suffix::none;
}

/// "2", "2.5", "1/2", "2-1/2" or "2 1/2".
tl::expected<double, LengthError> take_mixed_number(Reader& reader) {
    const auto first = reader.number();
    if (!first) return error_at(reader, "expected a number");
    double value = *first;
    if (reader.take("/")) {
        const auto bottom = reader.number();
        if (!bottom || *bottom == 0) return error_at(reader, "expected a number other than 0 under the fraction line");
        return value / *bottom;
    }
    const bool dash = reader.take("-");
    if (!dash && !reader.next_is_digit()) return value;
    const auto top = reader.number();
    if (!top || !reader.take("/")) return error_at(reader, "expected a fraction such as 1/2");
    const auto bottom = reader.number();
    if (!bottom || *bottom == 0) return error_at(reader, "expected a number other than 0 under the fraction line");
    return value + *top / *bottom;
}

Length in_unit(double value, Suffix suffix, Unit unit) {
    switch (suffix) {
        case Suffix::feet: return Length::inches(value * 12);
        case Suffix::inches: return Length::inches(value);
        case Suffix::millimetres: return Length::mm(value);
        case Suffix::centimetres: return Length::mm(value * 10);
        case Suffix::metres: return Length::mm(value * 1000);
        case Suffix::none: break;
    }
    return unit == Unit::inch ? Length::inches(value) : Length::mm(value);
}

}  // namespace

tl::expected<Length, LengthError> parse_length(std::string_view text, Unit unit) {
    Reader reader(text);
    if (reader.done()) return error_at(reader, "the length is empty");
    const bool negative = reader.take("-");
    const auto first = take_mixed_number(reader);
    if (!first) return tl::unexpected(first.error());
    const Suffix suffix = take_suffix(reader);
    Length total = in_unit(*first, suffix, unit);
    if (suffix == Suffix::feet && !reader.done()) {
        // After feet come inches, whose unit may be left out: 6' 2 1/2. A dash may join them: 6'-2".
        reader.take("-");
        const auto inches = take_mixed_number(reader);
        if (!inches) return tl::unexpected(inches.error());
        const Suffix second = take_suffix(reader);
        if (second != Suffix::inches && second != Suffix::none) return error_at(reader, "only inches can follow feet");
        total += Length::inches(*inches);
    }
    if (!reader.done()) return error_at(reader, "did not expect this after the length");
    if (!total.finite()) return error_at(reader, "the number is too large");
    return negative ? -total : total;
}

double nearest(double value) { return std::round(value + std::copysign(1e-9, value)); }

Length round_to_inch_fraction(Length value, int denominator) {
    return Length::inches(nearest(value.inches() * denominator) / denominator);
}

std::string inch_fraction(Length value, int denominator) {
    const auto parts = static_cast<long long>(nearest(value.inches() * denominator));
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
