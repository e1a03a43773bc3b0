#pragma once
// The look of the sheets from a text at hand.

#include <filesystem>
#include <string_view>

#include "fonts/style.h"

namespace kerfpacket::fonts {

/// What `read_style` gives, of the text of a layout.toml; `file` is what mistakes name.
Style parse_style(std::string_view text, const std::filesystem::path& file);

}  // namespace kerfpacket::fonts
