#pragma once
// What a PDF's content streams draw, read back with libqpdf: strokes and fills in page coordinates.

#include <filesystem>
#include <vector>

#include "geom/path.h"

namespace kerfpacket::tests {

using geom::Length;
using geom::Point;
using geom::Rect;

/// One subpath as painted: its corner points (curves by their end points), the pen's width.
struct Mark {
    std::vector<Point> points;
    Length width;  ///< 0 when only filled
    bool filled = false;
    Rect bounds() const;
};

struct PrintedPage {
    int number = 0;  ///< from 1
    Rect media;
    std::vector<Mark> marks;
};

/// Throws when the file is no PDF or turns pages by /Rotate.
std::vector<PrintedPage> read_content(const std::filesystem::path& pdf);

/// A mark strip as it stands on the paper. Found by its outline alone: 72 pt high, or 62.5 where that saves a sheet,
/// drawn 0.7 pt wide.
struct PrintedStrip {
    int page = 0;
    Rect outline;
    std::vector<Length> ticks;  ///< x of the hairlines that stand on the front edge, ascending
};

/// All strips in the order in which a person joins them: page by page, from the top down.
std::vector<PrintedStrip> printed_strips(const std::vector<PrintedPage>& pages);

}  // namespace kerfpacket::tests
