#pragma once
// Paper the program knows, by the self-describing names of PWG 5101.1.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "measure/fraction.h"
#include "measure/length.h"

namespace kerfpacket::job {

struct Media {
    std::string name;                          ///< PWG 5101.1 name: na_letter_8.5x11in
    std::string plain_name;                    ///< as printed: Letter 8-1/2 x 11 in
    measure::Length width;                     ///< upright: the shorter side; of a roll its width, across the feed
    measure::Length height;                    ///< of a roll the longest page that is cut from it
    bool roll = false;                         ///< continuous: pages are as long as what stands on them
    std::string figures{};                     ///< its size without the unit: 8-1/2 x 11; of a roll its width
    measure::Unit unit = measure::Unit::inch;  ///< that its name has
    bool operator==(const Media&) const = default;
};

/// A roll under this width takes no full-size drawings.
inline constexpr measure::Length narrowest_template_roll = measure::Length::inches(8.5);

/// All cut sheets that have a name of their own, in the order in which `media` lists them; Letter is the first.
const std::vector<Media>& all_media();

/// A sheet of the list, a sheet of another size (custom_NAME_8x20in, custom_NAME_200x500mm, the name turned upright),
/// or a roll (custom_roll_24in, custom_roll_62mm).
std::optional<Media> find_media(std::string_view name);

/// What was expected in place of a name that `find_media` does not know: the near miss, or how to name what is meant.
std::string media_hint(std::string_view name);
/// How sheets of other sizes and rolls are named, and how small and large they may be: one line each.
std::vector<std::string> custom_media_help();

}  // namespace kerfpacket::job
