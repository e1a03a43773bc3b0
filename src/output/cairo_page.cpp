#include "output/cairo_page.h"

#include <array>
#include <memory>
#include <optional>
#include <stdexcept>
#include <variant>
#include <vector>

#include <fmt/format.h>

#include "measure/require.h"
#include "output/dash.h"

namespace kerfpacket::output {
namespace {

using page::Length;

/// One page being drawn; y goes up, the unit is the point.
class Canvas {
public:
    Canvas(cairo_surface_t* surface, double units_a_point, const page::Page& page, CairoFaces& faces, Paint paint)
        : cairo_(cairo_create(surface), cairo_destroy), faces_(faces), paint_(paint) {
        // A surface of ink begins as white paper.
        if (paint == Paint::grey) {
            set_ink(page::Ink::white);
            cairo_paint(get());
        }
        cairo_scale(get(), units_a_point, -units_a_point);
        cairo_translate(get(), 0, -page.height.points());
        // Stretched about the page's middle, as page::corrected does.
        const double x = page.width.points() / 2;
        const double y = page.height.points() / 2;
        cairo_translate(get(), x, y);
        cairo_scale(get(), page.correction.x, page.correction.y);
        cairo_translate(get(), -x, -y);
        // Letters stand where they were measured, never on whole pixels.
        const std::unique_ptr<cairo_font_options_t, decltype(&cairo_font_options_destroy)> options(
            cairo_font_options_create(), cairo_font_options_destroy);
        cairo_font_options_set_antialias(options.get(), CAIRO_ANTIALIAS_GRAY);
        cairo_font_options_set_hint_style(options.get(), CAIRO_HINT_STYLE_NONE);
        cairo_font_options_set_hint_metrics(options.get(), CAIRO_HINT_METRICS_OFF);
        cairo_set_font_options(get(), options.get());
    }

    void draw(const page::PathItem& item) {
        set_ink(item.ink);
        trace(item.path);
        if (item.filled) cairo_fill_preserve(get());
        if (item.width > Length{}) {
            set_pen(item.width, item.dash);
            cairo_stroke_preserve(get());
        }
        cairo_new_path(get());
    }

    void draw(const page::TextItem& item) {
        faces_.faces().width(item.face, item.text, item.size);  // throws for what the face cannot print
        const double back = item.align == page::Align::left ? 0 : item.align == page::Align::centre ? 0.5 : 1;
        set_ink(item.ink);
        // Letters do not lie on each other; so added up they come out the same, in half the time.
        if (paint_ == Paint::ink && item.ink == page::Ink::black) cairo_set_operator(get(), CAIRO_OPERATOR_ADD);
        cairo_save(get());
        cairo_translate(get(), item.anchor.x.points(), item.anchor.y.points());
        cairo_rotate(get(), item.angle.radians());
        cairo_translate(get(), -item.advance.points() * back, 0);
        cairo_scale(get(), 1, -1);
        cairo_set_font_face(get(), faces_.get(item.face));
        cairo_set_font_size(get(), item.size.points());
        cairo_move_to(get(), 0, 0);
        cairo_show_text(get(), item.text.c_str());
        cairo_restore(get());
        cairo_new_path(get());
    }

    void draw(const page::LinkItem& /*pictures lead nowhere*/) {}

    /// All cells as one area, so that no seam shows between them.
    void draw(const page::CodeItem& item) {
        set_ink(page::Ink::black);
        const double cell = item.area.width().points() / static_cast<double>(item.side);
        for (std::size_t i = 0; i < item.dark.size(); ++i) {
            if (!item.dark[i]) continue;
            const std::size_t column = i % item.side;
            const std::size_t below = i / item.side + 1;
            cairo_rectangle(get(), item.area.low.x.points() + static_cast<double>(column) * cell,
                            item.area.high.y.points() - static_cast<double>(below) * cell, cell, cell);
        }
        cairo_fill(get());
    }

    void check() const {
        const cairo_status_t status = cairo_status(get());
        if (status != CAIRO_STATUS_SUCCESS)
            throw std::runtime_error(
                fmt::format("the picture library failed while drawing a page: {}", cairo_status_to_string(status)));
    }

private:
    cairo_t* get() const { return cairo_.get(); }

    void set_ink(page::Ink ink) {
        const bool black = ink == page::Ink::black;
        if (paint_ == Paint::ink) cairo_set_operator(get(), black ? CAIRO_OPERATOR_OVER : CAIRO_OPERATOR_DEST_OUT);
        const double level = black ? 0 : 1;
        cairo_set_source_rgb(get(), level, level, level);
    }

    void set_pen(Length width, page::Dash dash) {
        const std::vector<int> points = dash_pattern(dash);
        const std::vector<double> pattern(points.begin(), points.end());
        cairo_set_line_width(get(), width.points());
        cairo_set_dash(get(), pattern.data(), static_cast<int>(pattern.size()), 0);
    }

    void trace(const geom::Path& path) {
        measure::require(!path.empty(), "a path to draw has segments");
        cairo_move_to(get(), path.start().x.points(), path.start().y.points());
        for (const geom::Segment& segment : path.segments()) {
            if (segment.is_line()) cairo_line_to(get(), segment.to.x.points(), segment.to.y.points());
            else
                for (const auto& [c1, c2, end] : geom::cubic_pieces(segment))
                    cairo_curve_to(get(), c1.x.points(), c1.y.points(), c2.x.points(), c2.y.points(), end.x.points(),
                                   end.y.points());
        }
        if (path.closed()) cairo_close_path(get());
    }

    std::unique_ptr<cairo_t, decltype(&cairo_destroy)> cairo_;
    CairoFaces& faces_;
    Paint paint_;
};

}  // namespace

void draw_page(cairo_surface_t* surface, double units_a_point, const page::Page& page, CairoFaces& faces, Paint paint) {
    Canvas canvas(surface, units_a_point, page, faces, paint);
    for (const page::Item& item : page.items) std::visit([&](const auto& one) { canvas.draw(one); }, item);
    canvas.check();
}

}  // namespace kerfpacket::output
