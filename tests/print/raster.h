#pragma once
// Pages as pixels, drawn by readers that are no part of this project, and ink measured in them.

#include <cstdint>
#include <filesystem>
#include <string>
#include <vector>

#include "geom/point.h"

namespace kerfpacket::tests {

using geom::Length;
using geom::Rect;

struct Raster {
    int width = 0;
    int height = 0;
    double dpi = 0;
    std::vector<std::uint8_t> grey;  ///< rows from the top, 255 is paper

    double ink(int x, int y) const {
        return 255.0 -
               grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(width) + static_cast<std::size_t>(x)];
    }
};

/// Reads a binary PGM of 255 greys.
Raster read_pgm(const std::filesystem::path& file, double dpi);
void write_pgm(const std::filesystem::path& file, const Raster& raster);

enum class Renderer { mupdf, poppler, ghostscript };

/// One page, from 1. Throws with what the program said when it fails.
Raster draw_page(Renderer renderer, const std::filesystem::path& pdf, int page, double dpi);

/// Middle of the ink in an area of the page (origin lower left), across: sum((x + 1/2) ink) / sum(ink) over columns.
/// Throws when the area is blank.
Length ink_centre(const Raster& raster, const Rect& area);

/// The same up the page, from its lower edge.
Length ink_height(const Raster& raster, const Rect& area);

/// The pixels of an area of the page.
Raster crop(const Raster& raster, const Rect& area);

/// The picture in the middle of white paper, as much all round as it is high.
Raster framed(const Raster& picture);

/// The picture turned a quarter turn to the right.
Raster turned_right(const Raster& picture);

/// The picture as a scanner gives it that lies askew by this angle: as large, grey between its dots, white outside.
Raster askew(const Raster& picture, geom::Angle angle);

/// The picture copied, and the copy copied: both times it lies a little askew, and every dot comes out black or white.
Raster copied_twice(const Raster& picture);

/// Half the size: each pixel the mean of four.
Raster halved(const Raster& picture);

}  // namespace kerfpacket::tests
