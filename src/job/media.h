#pragma once
// Paper the program knows, by the self-describing names of PWG 5101.1.

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "measure/length.h"

namespace kerfpacket::job {

struct Media {
    std::string name;        ///< PWG 5101.1 name: na_letter_8.5x11in
    std::string plain_name;  ///< as printed: Letter 8-1/2 x 11 in
    measure::Length width;   ///< upright: the shorter side; of a roll its width, across the feed
    measure::Length height;  ///< of a roll the longest page that is cut from it
    bool roll = false;       ///< continuous: pages are as long as what stands on them
    bool operator==(const Media&) const = default;
};

/// The longest side of a PDF page (ISO 32000-1, annex C: 14400 units).
inline constexpr measure::Length longest_page = measure::Length::inches(200);
/// The smallest sheet that the cards find room on.
inline constexpr measure::Length least_sheet_width = measure::Length::inches(8);
inline constexpr measure::Length least_sheet_height = measure::Length::inches(10);
inline constexpr measure::Length least_roll = measure::Length::mm(25);
inline constexpr measure::Length least_template_roll = measure::Length::inches(8.5);
inline constexpr measure::Length widest_roll = measure::Length::inches(44);

/// All cut sheets with a name of their own, in the order in which `media` lists them.
const std::vector<Media>& all_media();

/// A sheet with a name of its own; "custom_NAME_8x20in" or "custom_NAME_200x500mm", a sheet of that size; or
/// "custom_roll_62mm" or "custom_roll_24in", a roll of that width. None for other words and for sizes out of range.
std::optional<Media> find_media(std::string_view name);

/// How sheets and rolls without a name of their own are called, for messages.
std::string custom_media_hint();

}  // namespace kerfpacket::job
