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
};

/// All cut sheets, in the order in which `media` lists them.
const std::vector<Media>& all_media();
std::optional<Media> find_media(std::string_view name);

}  // namespace kerfpacket::job
