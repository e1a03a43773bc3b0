#pragma once
// [rates]: what a shop reckons its work by. No rate is the program's: what is not given is a blank to fill in.

#include <algorithm>
#include <array>
#include <optional>
#include <string_view>

namespace kerfpacket::job {

/// Minutes for one of each, prices in whatever the shop pays in, and what glue and a blade are good for.
enum class Rate {
    hour,              ///< price of an hour of work
    minutes_crosscut,  ///< minutes for one, and so on
    minutes_rip,
    minutes_kerf,
    minutes_joint,
    minutes_mitre,
    minutes_segment,
    minutes_rib,
    minutes_coupon,
    paper,        ///< price of a sheet
    glue,         ///< price of one container
    glue_covers,  ///< by one container, in square feet or in square metres as the units are
    sharpening,   ///< price of one
    blade_lasts,  ///< from one sharpening to the next, feet or metres of kerf
};
inline constexpr std::size_t rate_count = 14;

/// The keys, in the order of `Rate`.
inline constexpr std::array<std::string_view, rate_count> rate_keys{
    "hour",          "minutes_crosscut", "minutes_rip", "minutes_kerf",   "minutes_joint",
    "minutes_mitre", "minutes_segment",  "minutes_rib", "minutes_coupon", "paper",
    "glue",          "glue_covers",      "sharpening",  "blade_lasts"};

struct Rates {
    std::array<std::optional<double>, rate_count> given{};

    bool any() const {
        return std::any_of(given.begin(), given.end(), [](const auto& rate) { return rate.has_value(); });
    }
    const std::optional<double>& of(Rate rate) const { return given.at(static_cast<std::size_t>(rate)); }
};

}  // namespace kerfpacket::job
