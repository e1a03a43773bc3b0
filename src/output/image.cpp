#include "output/image.h"

#include <algorithm>
#include <cmath>
#include <memory>
#include <numeric>
#include <stdexcept>
#include <string_view>
#include <vector>

#include <cairo-svg.h>
#include <cairo.h>
#include <fmt/format.h>

#include "disk/side_by_side.h"
#include "measure/require.h"
#include "output/cairo_page.h"
#include "output/png.h"

namespace kerfpacket::output {
namespace {

using page::Length;
using Surface = std::unique_ptr<cairo_surface_t, decltype(&cairo_surface_destroy)>;

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int length) {
    static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);  // NOLINT(*-cast)
    return CAIRO_STATUS_SUCCESS;
}

void check(cairo_status_t status, const char* doing) {
    if (status != CAIRO_STATUS_SUCCESS)
        throw std::runtime_error(
            fmt::format("the picture library failed while {}: {}", doing, cairo_status_to_string(status)));
}

/// Cairo names the drawing by a count of all surfaces so far; the same page must give the same bytes.
void name_plainly(std::string& svg) {
    const std::string_view start = "<g id=\"surface";
    const std::size_t at = svg.find(start);
    if (at == std::string::npos) return;
    const std::size_t end = svg.find('"', at + start.size());
    svg.replace(at, end - at, "<g id=\"page");
}

std::size_t size(int n) { return static_cast<std::size_t>(n); }

/// The alpha channel alone: a byte a pixel, how much ink there is.
Surface picture(double width, double height) {
    if (!(width >= 1 && height >= 1 && width <= 32767 && height <= 32767))
        throw std::runtime_error(
            fmt::format("a picture of {} x {} pixels is too large or too small: 1 to 32767 a side; "
                        "choose another dpi",
                        width, height));
    Surface surface(cairo_image_surface_create(CAIRO_FORMAT_A8, static_cast<int>(width), static_cast<int>(height)),
                    cairo_surface_destroy);
    check(cairo_surface_status(surface.get()), "making room for a picture");
    return surface;
}

/// Takes all ink off.
void wipe(cairo_surface_t* surface) {
    cairo_surface_flush(surface);
    std::fill_n(cairo_image_surface_get_data(surface),
                size(cairo_image_surface_get_stride(surface)) * size(cairo_image_surface_get_height(surface)), '\0');
    cairo_surface_mark_dirty(surface);
}

std::string png_of(cairo_surface_t* surface, std::string& rows) {
    cairo_surface_flush(surface);
    return ink_png(cairo_image_surface_get_data(surface), size(cairo_image_surface_get_width(surface)),
                   size(cairo_image_surface_get_height(surface)), size(cairo_image_surface_get_stride(surface)), rows);
}

/// Pages in rows, in a picture about as wide as it is high; each row as high as its highest page. All figures are
/// pixels.
class ContactGrid {
public:
    ContactGrid(const page::Document& document, double dpi) : dpi_(dpi) {
        measure::require(!document.pages.empty(), "a document has pages");
        double widest = 0;
        double area = 0;
        for (const page::Page& page : document.pages) {
            widest = std::max(widest, pixels(std::min(page.width, longest)));
            area += height(page);
        }
        cell_width_ = widest + pixels(gap);
        const auto pages = static_cast<double>(document.pages.size());
        columns_ = static_cast<std::size_t>(std::clamp(std::ceil(std::sqrt(area / cell_width_)), 1.0, pages));
        for (std::size_t i = 0; i < document.pages.size(); ++i) {
            if (i % columns_ == 0) rows_.push_back(0);
            rows_.back() = std::max(rows_.back(), height(document.pages[i]));
        }
    }

    double width() const { return cell_width_ * static_cast<double>(columns_); }
    double height() const { return std::accumulate(rows_.begin(), rows_.end(), 0.0); }
    double cell_width() const { return cell_width_; }
    /// How much smaller still a page is drawn than `dpi` says: 1 for all but the long pages of rolls.
    double scale(const page::Page& page) const { return std::min({1.0, longest / page.width, longest / page.height}); }
    double left(std::size_t i) const {
        return std::floor(pixels(gap) / 2) + cell_width_ * static_cast<double>(i % columns_);
    }
    double top(std::size_t i) const {
        const auto row = static_cast<std::ptrdiff_t>(i / columns_);
        return std::floor(pixels(gap) / 2) + std::accumulate(rows_.begin(), rows_.begin() + row, 0.0);
    }
    /// Where the caption goes.
    double below(std::size_t i, const page::Page& page) const { return top(i) + pixels(page.height * scale(page)); }

private:
    static constexpr Length gap = Length::points(24);
    static constexpr Length caption = Length::points(36);
    static constexpr Length longest = Length::inches(17);  ///< a ledger sheet's longer side

    double pixels(Length length) const { return std::ceil(length.inches() * dpi_); }
    /// Of a row that holds the page.
    double height(const page::Page& page) const { return pixels(page.height * scale(page)) + pixels(caption + gap); }

    double dpi_;
    double cell_width_ = 0;
    std::size_t columns_ = 1;
    std::vector<double> rows_;
};

/// The edge of the paper, one pixel wide.
page::Item frame_of(const page::Page& page, double dpi) {
    page::PathItem frame;
    frame.width = Length::inches(1 / dpi);
    frame.path = geom::Path::rectangle(geom::Rect{{}, {page.width, page.height}}.grown(frame.width / -2));
    return frame;
}

/// "7 strips A" under a page.
page::Page caption_of(const page::Page& page, double inches) {
    page::Page line;
    line.width = Length::inches(inches);
    line.height = Length::points(34);
    page::TextItem text;
    text.text = fmt::format("{} {}{}{}", page.number, page.sheet, page.piece.empty() ? "" : " ", page.piece);
    text.face = page::Face::bold;
    text.size = Length::points(26);
    text.anchor = {Length::points(2), Length::points(9)};
    line.items.emplace_back(text);
    return line;
}

struct Pixel {
    double x;
    double y;
};

void draw_part(cairo_surface_t* whole, Pixel at, const page::Page& page, CairoFaces& faces, double dpi) {
    const Surface part(cairo_surface_create_for_rectangle(whole, at.x, at.y, std::ceil(page.width.inches() * dpi),
                                                          std::ceil(page.height.inches() * dpi)),
                       cairo_surface_destroy);
    check(cairo_surface_status(part.get()), "making room for a page");
    draw_page(part.get(), dpi / 72, page, faces, Paint::ink);
}

/// Draws pages one after the other, in the same memory as far as they are of one size.
class Pictures {
public:
    Pictures(const fonts::Faces& faces, double dpi) : faces_(faces), dpi_(dpi) {}

    std::string png(const page::Page& page) {
        take_paper(std::ceil(page.width.inches() * dpi_ - 1e-6), std::ceil(page.height.inches() * dpi_ - 1e-6));
        draw_page(paper_.get(), dpi_ / 72, page, faces_, Paint::ink);
        return png_of(paper_.get(), rows_);
    }

private:
    void take_paper(double width, double height) {
        if (!paper_ || width_ != width || height_ != height) paper_ = picture(width, height);
        else wipe(paper_.get());
        width_ = width;
        height_ = height;
    }

    CairoFaces faces_;
    double dpi_;
    Surface paper_{nullptr, cairo_surface_destroy};
    double width_ = 0;
    double height_ = 0;
    std::string rows_;
};

}  // namespace

std::string png(const page::Page& page, const fonts::Faces& faces, double dpi) {
    return Pictures(faces, dpi).png(page);
}

void each_png(const page::Document& document, const fonts::Faces& faces, double dpi, const TakePicture& take,
              unsigned threads) {
    disk::SideBySide<std::string> pictures(document.pages.size(), threads);
    const auto new_maker = [&] {
        return [&, maker = Pictures(faces, dpi)](std::size_t page) mutable { return maker.png(document.pages[page]); };
    };
    pictures.run(new_maker, take);
}

std::string contact_sheet(const page::Document& document, const fonts::Faces& faces, double dpi) {
    CairoFaces opened(faces);
    const ContactGrid grid(document, dpi);
    const Surface surface = picture(grid.width(), grid.height());
    page::Page paper;
    paper.width = Length::inches(grid.width() / dpi);
    paper.height = Length::inches(grid.height() / dpi);
    draw_page(surface.get(), dpi / 72, paper, opened, Paint::ink);
    for (std::size_t i = 0; i < document.pages.size(); ++i) {
        page::Page framed = document.pages[i];
        const double scale = grid.scale(framed);
        framed.items.push_back(frame_of(framed, dpi * scale));
        draw_part(surface.get(), {grid.left(i), grid.top(i)}, framed, opened, dpi * scale);
        draw_part(surface.get(), {grid.left(i), grid.below(i, framed)}, caption_of(framed, grid.cell_width() / dpi),
                  opened, dpi);
    }
    std::string rows;
    return png_of(surface.get(), rows);
}

std::string svg(const page::Page& page, const fonts::Faces& faces) {
    CairoFaces opened(faces);
    std::string bytes;
    const Surface surface(
        cairo_svg_surface_create_for_stream(append, &bytes, page.width.points(), page.height.points()),
        cairo_surface_destroy);
    draw_page(surface.get(), 1, page, opened, Paint::grey);
    cairo_surface_finish(surface.get());
    check(cairo_surface_status(surface.get()), "writing an SVG");
    name_plainly(bytes);
    return bytes;
}

}  // namespace kerfpacket::output
