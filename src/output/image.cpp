#include "output/image.h"

#include <cmath>
#include <memory>
#include <stdexcept>
#include <string_view>

#include <cairo-svg.h>
#include <cairo.h>
#include <fmt/format.h>

#include "output/cairo_page.h"

namespace kerfpacket::output {
namespace {

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

}  // namespace

std::string png(const page::Page& page, const fonts::Faces& faces, double dpi) {
    const double width = std::ceil(page.width.inches() * dpi - 1e-6);
    const double height = std::ceil(page.height.inches() * dpi - 1e-6);
    if (!(width >= 1 && height >= 1 && width <= 32767 && height <= 32767))
        throw std::runtime_error(
            fmt::format("a picture of {} x {} pixels is too large or too small: 1 to 32767 a side; "
                        "choose another dpi",
                        width, height));
    // The alpha channel alone: a byte a pixel, which Cairo writes as a grey PNG.
    const Surface surface(
        cairo_image_surface_create(CAIRO_FORMAT_A8, static_cast<int>(width), static_cast<int>(height)),
        cairo_surface_destroy);
    check(cairo_surface_status(surface.get()), "making room for a picture");
    draw_page(surface.get(), dpi / 72, page, faces, Paint::alpha);
    std::string bytes;
    check(cairo_surface_write_to_png_stream(surface.get(), append, &bytes), "writing a PNG");
    return bytes;
}

std::string svg(const page::Page& page, const fonts::Faces& faces) {
    std::string bytes;
    const Surface surface(
        cairo_svg_surface_create_for_stream(append, &bytes, page.width.points(), page.height.points()),
        cairo_surface_destroy);
    draw_page(surface.get(), 1, page, faces, Paint::grey);
    cairo_surface_finish(surface.get());
    check(cairo_surface_status(surface.get()), "writing an SVG");
    name_plainly(bytes);
    return bytes;
}

}  // namespace kerfpacket::output
