#pragma once
// templates/layout.toml: what a shop may want to change in the look of the sheets, never what geometry decides.

#include <filesystem>
#include <string>
#include <vector>

#include "measure/length.h"

namespace kerfpacket::fonts {

using measure::Length;

struct Style {
    std::vector<std::string> order;  ///< sheets in packet order
    // Type sizes.
    Length tiny, small, text, strong, title, huge;  ///< 8, 9, 11, 13, 17, 24 pt
    // Line weights.
    Length hair, fine, line, heavy, end;  ///< 0.25, 0.5, 0.7, 1.4, 2.8 pt
    Length strip_height;                  ///< 72 pt
    Length strip_lap;                     ///< 54 pt
    Length tile_overlap;                  ///< how far a tile's window reaches beyond its cell, 27 pt
};

/// Reads templates/layout.toml; throws std::runtime_error that names file, line and key.
Style read_style(const std::filesystem::path& templates);

}  // namespace kerfpacket::fonts
