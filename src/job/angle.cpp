// Angles as a job file gives them: degrees with decimals. Like a length, what could be taken in two ways is a question.
#include <algorithm>
#include <array>
#include <cctype>
#include <charconv>
#include <cmath>

#include "job/context.h"
#include "measure/doubt.h"

namespace kerfpacket::job {
namespace {

/// Degrees, or the byte where the words go wrong; message and hint are empty where nothing better is known than what
/// an angle looks like.
struct AngleWords {
    std::optional<double> degrees;
    std::size_t stopped_at = 0;
    std::string message;
    std::string hint;
};

constexpr std::array<std::string_view, 5> units{"degrees", "degree", "deg", "\u00B0", "d"};

class AngleReader {
public:
    explicit AngleReader(std::string_view words) : words_(words) {}

    AngleWords run() {
        blanks();
        for (const std::string_view minus : {"-", "\u2212"})
            if (sign_.empty() && take(minus)) sign_ = "-";
        const std::size_t at = at_;
        const std::string figure = digits();
        if (figure.empty()) return {std::nullopt, at, "", ""};
        if (auto doubted = doubt(figure, at)) return *std::move(doubted);
        const double value = number(figure);
        blanks();
        const bool unit = std::any_of(units.begin(), units.end(), [&](auto one) { return take(one); });
        blanks();
        if (done()) return {sign_.empty() ? value : -value, 0, "", ""};
        return more_than_degrees(value, unit);
    }

private:
    bool done() const { return at_ == words_.size(); }
    void blanks() { at_ = std::min(words_.find_first_not_of(' ', at_), words_.size()); }
    bool take(std::string_view word) {
        const bool there = words_.substr(at_).starts_with(word);
        if (there) at_ += word.size();
        return there;
    }
    std::string digits() {
        const std::size_t from = at_;
        at_ = std::min(words_.find_first_not_of("0123456789.,", at_), words_.size());
        return std::string(words_.substr(from, at_ - from));
    }
    static double number(const std::string& text) {
        double value = 0;
        std::from_chars(text.data(), text.data() + text.size(), value);
        return value;
    }
    std::string shown(double degrees) const { return "\"" + sign_ + measure::figure_text(degrees, true) + " deg\""; }

    std::optional<AngleWords> doubt(const std::string& figure, std::size_t at) const {
        const std::size_t point = figure.find_first_of(".,");
        if (point == std::string::npos) return std::nullopt;
        const std::string whole = figure.substr(0, point), rest = figure.substr(point + 1);
        if (rest.find_first_of(".,") != std::string::npos)
            return AngleWords{std::nullopt, at, "points and commas stand here that make no number", ""};
        if (whole.empty() || rest.empty())
            return AngleWords{
                std::nullopt, at,
                whole.empty() ? "a figure is missing before the point" : "nothing stands behind the point", ""};
        const double decimal = number(whole + "." + rest);
        if (figure[point] == ',')
            return AngleWords{std::nullopt, at, "a comma stands in the number",
                              "decimals have a point: write " + shown(decimal)};
        // 45.30: nobody writes the last 0 of a decimal, but everybody that of thirty minutes.
        if (rest.size() == 2 && rest[1] == '0' && rest[0] != '0' && number(rest) < 60)
            return two_ways(at, decimal, number(whole) + number(rest) / 60);
        return std::nullopt;
    }

    AngleWords two_ways(std::size_t at, double one, double other) const {
        const measure::LengthError both = measure::two_ways(at, shown(one), shown(other));
        return {std::nullopt, at, both.message, both.hint};
    }

    /// 22 1/2, 22-1/2 deg; 45 30', 45 deg 30 min, 45:30.
    AngleWords more_than_degrees(double value, bool unit) {
        const std::size_t at = at_;
        AngleWords strange{std::nullopt, at, "", ""};
        if (words_[at] == '/') return strange;
        const bool joined = take("-") || take(":");
        const double second = number(digits());
        if (second == 0) return strange;
        if (take("/")) {
            const double bottom = number(digits());
            if (bottom <= second) return strange;
            return {std::nullopt, at, "an angle has decimals in place of a fraction",
                    "write " + shown(value + second / bottom)};
        }
        blanks();
        constexpr std::array<std::string_view, 4> minutes{"'", "\u2032", "min", "m"};
        const bool named = std::any_of(minutes.begin(), minutes.end(), [&](auto one) { return take(one); });
        if (!done() || second >= 60) return strange;
        if (named || unit || joined)
            return {std::nullopt, at, "an angle has decimals in place of minutes",
                    "write " + shown(value + second / 60)};
        return two_ways(at, value + second / 60, value + second / (second < 10 ? 10 : 100));
    }

    std::string_view words_;
    std::size_t at_ = 0;
    std::string sign_;
};

}  // namespace

std::optional<double> Context::degrees_in(const toml::node& node, std::string_view name, std::string_view expected) {
    const auto* words = node.as_string();
    const std::optional<double> bare = bare_number(node);
    const std::string text = words != nullptr ? words->get() : bare ? std::string(figures(node)) : "";
    AngleWords read = AngleReader(text).run();
    // What stands in the file is no plain figure: inf, nan; or a value that is not on its line.
    if (bare && text.empty() && std::isfinite(*bare)) read.degrees = bare;
    if (read.degrees) return read.degrees;
    const Position at = words != nullptr ? within(node, text, read.stopped_at) : position(node);
    if (read.message.empty()) error(at, std::string(name) + " must be an angle in degrees", std::string(expected));
    else error(at, std::string(name) + ": " + read.message, read.hint.empty() ? std::string(expected) : read.hint);
    return std::nullopt;
}

std::optional<Sourced<Angle>> Context::angle(const toml::node& node, std::string_view name) {
    constexpr double least = 0.1;
    constexpr double most = 180;
    const std::string key(name);
    const std::string expected = "expected more than 0 and at most 180 degrees, for example 90 or \"65.123 deg\"";
    const auto degrees = degrees_in(node, name, expected);
    if (!degrees) return std::nullopt;
    const Position at = position(node);
    if (*degrees <= 0) error(at, key + (*degrees < 0 ? " is negative" : " is 0"), expected);
    else if (*degrees > most) error(at, key + " is more than a half circle", expected);
    else if (*degrees < least) error(at, key + " is too small to be bent", "expected at least 0.1 degrees");
    else return Sourced<Angle>{Angle::degrees(*degrees), at};
    return std::nullopt;
}

std::optional<Sourced<Angle>> Context::slope(const toml::node& node, std::string_view name) {
    constexpr double most = 89;
    if (pass_over(node)) return std::nullopt;
    const std::string expected = "expected from -89 to 89 degrees, rising to the right positive, for example 12.5";
    const auto degrees = degrees_in(node, name, expected);
    if (!degrees) return std::nullopt;
    if (std::abs(*degrees) <= most) return Sourced<Angle>{Angle::degrees(*degrees), position(node)};
    error(position(node), std::string(name) + " is too steep", expected);
    return std::nullopt;
}

}  // namespace kerfpacket::job
