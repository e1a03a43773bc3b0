#include "bench/raw_cairo.h"

#include <array>
#include <stdexcept>
#include <variant>

#include <cairo-ft.h>
#include <cairo-pdf.h>

namespace kerfpacket::bench {
namespace {

cairo_status_t append(void* bytes, const unsigned char* data, unsigned int length) {
    static_cast<std::string*>(bytes)->append(reinterpret_cast<const char*>(data), length);
    return CAIRO_STATUS_SUCCESS;
}

/// FreeType and the four faces, as long as the program lives: it is timed often.
const std::array<cairo_font_face_t*, 4>& faces() {
    static const std::array<cairo_font_face_t*, 4> loaded = [] {
        FT_Library library = nullptr;
        if (FT_Init_FreeType(&library) != 0) throw std::runtime_error("cannot start FreeType");
        std::array<cairo_font_face_t*, 4> all{};
        constexpr std::array files{"DejaVuSans.ttf", "DejaVuSans-Bold.ttf", "DejaVuSansCondensed.ttf",
                                   "DejaVuSansCondensed-Bold.ttf"};
        for (std::size_t i = 0; i < all.size(); ++i) {
            const std::string file = std::string(KERFPACKET_WHOLE_FACES "/") + files.at(i);
            FT_Face face = nullptr;
            if (FT_New_Face(library, file.c_str(), 0, &face) != 0) throw std::runtime_error("cannot read " + file);
            all.at(i) = cairo_ft_font_face_create_for_ft_face(face, FT_LOAD_NO_HINTING);
        }
        return all;
    }();
    return loaded;
}

void set_ink(cairo_t* cairo, page::Ink ink) {
    const double level = ink == page::Ink::white ? 1 : 0;
    cairo_set_source_rgb(cairo, level, level, level);
}

void draw(cairo_t* cairo, const page::PathItem& item) {
    const geom::Path& path = item.path;
    cairo_move_to(cairo, path.start().x.points(), path.start().y.points());
    for (const geom::Segment& segment : path.segments())
        if (segment.is_line()) cairo_line_to(cairo, segment.to.x.points(), segment.to.y.points());
        else
            for (const auto& [a, b, c] : geom::cubic_pieces(segment))
                cairo_curve_to(cairo, a.x.points(), a.y.points(), b.x.points(), b.y.points(), c.x.points(),
                               c.y.points());
    if (path.closed()) cairo_close_path(cairo);
    set_ink(cairo, item.ink);
    const std::array<double, 2> dashes{4, 3};
    cairo_set_dash(cairo, dashes.data(), item.dash == page::Dash::solid ? 0 : 2, 0);
    cairo_set_line_width(cairo, item.width.points());
    if (item.filled) cairo_fill_preserve(cairo);
    if (item.width > page::Length{}) cairo_stroke_preserve(cairo);
    cairo_new_path(cairo);
}

void draw(cairo_t* cairo, const page::TextItem& item) {
    const double back = item.align == page::Align::left ? 0 : item.align == page::Align::centre ? 0.5 : 1;
    cairo_save(cairo);
    cairo_translate(cairo, item.anchor.x.points(), item.anchor.y.points());
    cairo_rotate(cairo, item.angle.radians());
    cairo_scale(cairo, 1, -1);
    set_ink(cairo, item.ink);
    cairo_set_font_face(cairo, faces().at(static_cast<std::size_t>(item.face)));
    cairo_set_font_size(cairo, item.size.points());
    cairo_move_to(cairo, -item.advance.points() * back, 0);
    cairo_show_text(cairo, item.text.c_str());
    cairo_restore(cairo);
}

}  // namespace

std::string raw_cairo(const page::Document& document) {
    std::string bytes;
    cairo_surface_t* surface = cairo_pdf_surface_create_for_stream(append, &bytes, 612, 792);
    cairo_t* cairo = cairo_create(surface);
    for (const page::Page& content : document.pages) {
        cairo_pdf_surface_set_size(surface, content.width.points(), content.height.points());
        cairo_save(cairo);
        cairo_translate(cairo, 0, content.height.points());
        cairo_scale(cairo, 1, -1);
        for (const page::Item& item : content.items)
            if (const auto* path = std::get_if<page::PathItem>(&item)) draw(cairo, *path);
            else if (const auto* text = std::get_if<page::TextItem>(&item)) draw(cairo, *text);
        cairo_restore(cairo);
        cairo_show_page(cairo);
    }
    const bool failed = cairo_status(cairo) != CAIRO_STATUS_SUCCESS;
    cairo_destroy(cairo);
    cairo_surface_finish(surface);
    cairo_surface_destroy(surface);
    if (failed) throw std::runtime_error("Cairo failed");
    return bytes;
}

}  // namespace kerfpacket::bench
