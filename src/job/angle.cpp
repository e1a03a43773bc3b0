// Angles as a job file gives them.
#include <algorithm>
#include <charconv>
#include <cmath>

#include "job/context.h"

namespace kerfpacket::job {
namespace {

struct AngleWords {
    std::optional<double> degrees;
    std::size_t stopped_at = 0;
};

/// "65.123 deg", "30 degrees", "30°" or "30".
AngleWords read_degrees(std::string_view words) {
    double value = 0;
    const std::size_t start = std::min(words.find_first_not_of(' '), words.size());
    const char* end = words.data() + words.size();
    const auto [stop, failed] = std::from_chars(words.data() + start, end, value);
    if (failed != std::errc{} || !std::isfinite(value)) return {std::nullopt, start};
    auto rest = words.substr(static_cast<std::size_t>(stop - words.data()));
    rest.remove_prefix(std::min(rest.find_first_not_of(' '), rest.size()));
    for (const std::string_view unit : {"degrees", "degree", "deg", "\xC2\xB0", ""})
        if (rest == unit) return {value, 0};
    return {std::nullopt, words.size() - rest.size()};
}

}  // namespace

std::optional<double> Context::degrees_in(const toml::node& node, std::string_view name, std::string_view expected) {
    Position at = position(node);
    std::optional<double> degrees = bare_number(node);
    if (const auto* words = node.as_string()) {
        const AngleWords read = read_degrees(words->get());
        degrees = read.degrees;
        if (!degrees) at = within(node, words->get(), read.stopped_at);
    }
    if (degrees && std::isfinite(*degrees)) return degrees;
    error(at, std::string(name) + " must be an angle in degrees", std::string(expected));
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
