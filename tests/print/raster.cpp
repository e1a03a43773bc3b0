#include "print/raster.h"

#include <cctype>
#include <cmath>
#include <sstream>
#include <stdexcept>
#include <string>

#include "support/program.h"

namespace kerfpacket::tests {
namespace {

struct Pixels {
    int left, right, top, bottom;  ///< half open
};

Pixels pixels_of(const Raster& raster, const Rect& area) {
    const auto clamp = [](double value, int end) { return std::clamp(static_cast<int>(std::lround(value)), 0, end); };
    const auto x = [&](Length length) { return length.inches() * raster.dpi; };
    return {clamp(x(area.low.x), raster.width), clamp(x(area.high.x), raster.width),
            clamp(raster.height - x(area.high.y), raster.height), clamp(raster.height - x(area.low.y), raster.height)};
}

struct Middle {
    double x, y;  ///< in pixels from the upper left
};

/// Middle of the ink. A tick of the right width that is so many pixels long has a hundred greys for each; a few grey
/// pixels are no line.
Middle middle(const Raster& raster, const Pixels& box, int long_as) {
    double ink = 0, across = 0, down = 0;
    for (int y = box.top; y < box.bottom; ++y) {
        for (int x = box.left; x < box.right; ++x) {
            ink += raster.ink(x, y);
            across += (x + 0.5) * raster.ink(x, y);
            down += (y + 0.5) * raster.ink(x, y);
        }
    }
    if (ink < 100.0 * long_as) throw std::runtime_error("there is no line in that area");
    return {across / ink, down / ink};
}

Raster blank(int width, int height, double dpi) {
    return {width, height, dpi,
            std::vector<std::uint8_t>(static_cast<std::size_t>(width) * static_cast<std::size_t>(height), 255)};
}

/// Draws one page to page.pgm in the folder.
std::vector<std::string> command(Renderer renderer, const fs::path& pdf, int page, const std::string& dpi,
                                 const fs::path& folder) {
    const std::string number = std::to_string(page);
    const std::string picture = (folder / "page.pgm").string();
    switch (renderer) {
        case Renderer::mupdf:
            return {"mutool", "draw", "-q", "-r", dpi, "-c", "gray", "-A", "8", "-o", picture, pdf.string(), number};
        case Renderer::poppler:
            return {"pdftoppm",
                    "-gray",
                    "-r",
                    dpi,
                    "-f",
                    number,
                    "-l",
                    number,
                    "-singlefile",
                    pdf.string(),
                    (folder / "page").string()};
        case Renderer::ghostscript:
            return {"gs",
                    "-q",
                    "-dBATCH",
                    "-dNOPAUSE",
                    "-dSAFER",
                    "-sDEVICE=pgmraw",
                    "-r" + dpi,
                    "-dGraphicsAlphaBits=4",
                    "-dTextAlphaBits=4",
                    "-dFirstPage=" + number,
                    "-dLastPage=" + number,
                    "-sOutputFile=" + picture,
                    pdf.string()};
    }
    throw std::logic_error("a renderer without a command");
}

}  // namespace

Raster read_pgm(const std::filesystem::path& file, double dpi) {
    const std::string bytes = slurp(file);
    std::istringstream header(bytes);
    std::string magic;
    int width = 0, height = 0, greys = 0;
    header >> magic >> std::ws;
    for (std::string comment; header.peek() == '#';) std::getline(header, comment);
    header >> width >> height >> greys;
    const std::size_t size = static_cast<std::size_t>(width) * static_cast<std::size_t>(height);
    if (magic != "P5" || greys != 255 || bytes.size() < size) throw std::runtime_error(file.string() + " is no PGM");
    return {width, height, dpi, {bytes.end() - static_cast<std::ptrdiff_t>(size), bytes.end()}};
}

void write_pgm(const std::filesystem::path& file, const Raster& raster) {
    spill(file, "P5\n" + std::to_string(raster.width) + " " + std::to_string(raster.height) + "\n255\n" +
                    std::string(raster.grey.begin(), raster.grey.end()));
}

Raster draw_page(Renderer renderer, const std::filesystem::path& pdf, int page, double dpi) {
    const Folder folder;
    const std::string resolution = std::to_string(static_cast<int>(dpi));
    const Outcome drawn = run_program(command(renderer, pdf, page, resolution, folder.path()));
    if (drawn.status != 0)
        throw std::runtime_error("page " + std::to_string(page) + " could not be drawn: " + drawn.err);
    return read_pgm(folder / "page.pgm", dpi);
}

Length ink_centre(const Raster& raster, const Rect& area) {
    const Pixels box = pixels_of(raster, area);
    return Length::inches(middle(raster, box, box.bottom - box.top).x / raster.dpi);
}

Length ink_height(const Raster& raster, const Rect& area) {
    const Pixels box = pixels_of(raster, area);
    return Length::inches((raster.height - middle(raster, box, box.right - box.left).y) / raster.dpi);
}

Raster crop(const Raster& raster, const Rect& area) {
    const Pixels box = pixels_of(raster, area);
    Raster part = blank(box.right - box.left, box.bottom - box.top, raster.dpi);
    for (int y = box.top; y < box.bottom; ++y)
        std::copy_n(raster.grey.begin() + static_cast<std::ptrdiff_t>(y) * raster.width + box.left, part.width,
                    part.grey.begin() + static_cast<std::ptrdiff_t>(y - box.top) * part.width);
    return part;
}

Raster framed(const Raster& picture) {
    const int margin = picture.height;
    Raster sheet = blank(picture.width + 2 * margin, picture.height + 2 * margin, picture.dpi);
    for (int y = 0; y < picture.height; ++y)
        std::copy_n(picture.grey.begin() + static_cast<std::ptrdiff_t>(y) * picture.width, picture.width,
                    sheet.grey.begin() + static_cast<std::ptrdiff_t>(margin + y) * sheet.width + margin);
    return sheet;
}

Raster turned_right(const Raster& picture) {
    Raster turned = blank(picture.height, picture.width, picture.dpi);
    for (int y = 0; y < turned.height; ++y)
        for (int x = 0; x < turned.width; ++x)
            turned.grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(turned.width) +
                        static_cast<std::size_t>(x)] =
                static_cast<std::uint8_t>(255 - picture.ink(y, picture.height - 1 - x));
    return turned;
}

Raster askew(const Raster& picture, geom::Angle angle) {
    Raster turned = blank(picture.width, picture.height, picture.dpi);
    const auto ink = [&](int x, int y) {
        return x < 0 || y < 0 || x >= picture.width || y >= picture.height ? 0.0 : picture.ink(x, y);
    };
    const double c = std::cos(angle.radians()), s = std::sin(angle.radians());
    const double middle_x = picture.width / 2.0, middle_y = picture.height / 2.0;
    for (int y = 0; y < turned.height; ++y) {
        for (int x = 0; x < turned.width; ++x) {
            const double u = (x - middle_x) * c + (y - middle_y) * s + middle_x;
            const double v = (y - middle_y) * c - (x - middle_x) * s + middle_y;
            const int left = static_cast<int>(std::floor(u)), top = static_cast<int>(std::floor(v));
            const double right = u - left, down = v - top;
            const double mixed = (ink(left, top) * (1 - right) + ink(left + 1, top) * right) * (1 - down) +
                                 (ink(left, top + 1) * (1 - right) + ink(left + 1, top + 1) * right) * down;
            turned.grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(turned.width) +
                        static_cast<std::size_t>(x)] = static_cast<std::uint8_t>(std::lround(255 - mixed));
        }
    }
    return turned;
}

Raster copied_twice(const Raster& picture) {
    Raster copy = picture;
    for (const double degrees : {0.3, -0.4}) {
        copy = askew(copy, geom::Angle::degrees(degrees));
        for (std::uint8_t& dot : copy.grey) dot = dot < 128 ? 0 : 255;
    }
    return copy;
}

Raster halved(const Raster& picture) {
    Raster half = blank(picture.width / 2, picture.height / 2, picture.dpi / 2);
    for (int y = 0; y < half.height; ++y) {
        for (int x = 0; x < half.width; ++x) {
            double ink = 0;
            for (const int dy : {0, 1})
                for (const int dx : {0, 1}) ink += picture.ink(2 * x + dx, 2 * y + dy);
            half.grey[static_cast<std::size_t>(y) * static_cast<std::size_t>(half.width) +
                      static_cast<std::size_t>(x)] = static_cast<std::uint8_t>(255 - ink / 4);
        }
    }
    return half;
}

}  // namespace kerfpacket::tests
