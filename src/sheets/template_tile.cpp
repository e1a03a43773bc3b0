#include "sheets/template_tile.h"

#include <algorithm>

#include "sheets/furniture.h"
#include "sheets/template_marks.h"
#include "sheets/template_names.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length cross_arm = Length::points(16);

class TilePage {
public:
    TilePage(const TemplateContext& context, const Tile& tile, Draft& draft)
        : context_(context),
          tile_(tile),
          pen_(draft.page, context.kit),
          cell_(cell_on_page()),
          window_(cell_.grown(context.tiling.overlap())),
          labels_(pen_, cell_.grown(-1_pt)) {}

    void draw() {
        cell_lines();
        crosses();
        wood();
        numerals();
        set_out_lines();
        TemplateMarks marks(context_, tile_, pen_, labels_, cell_);
        marks.neighbours();
        TemplateNames(context_, pen_, labels_, cell_, shift()).draw();
        marks.coordinate();
        marks.note();
        marks.small_map();
    }

private:
    const fonts::Style& style() const { return context_.kit.style; }
    Point shift() const { return cell_.low - tile_.cell.low; }

    /// In the middle between the sides, and between the header's rule and the check bar.
    Rect cell_on_page() const {
        const CellSize cell = context_.tiling.cell();
        const Length lowest = check_bar_height + 9_pt;
        const Length highest = pen_.from_top(63_pt);
        const Point low{(pen_.page_width() - cell.width) / 2, (lowest + highest - cell.height) / 2};
        return {low, {low.x + cell.width, low.y + cell.height}};
    }

    /// Dotted where another tile joins; at the other sides nothing is cut.
    void cell_lines() {
        const auto dotted = [&](int across, int down, Point from, Point to) {
            if (context_.tiling.printed_at(tile_.column + across, tile_.row + down) != nullptr)
                pen_.line(Role::registration, from, to, style().line, Dash::dotted);
        };
        const Point low = window_.low;
        const Point high = window_.high;
        dotted(-1, 0, {cell_.low.x, low.y}, {cell_.low.x, high.y});
        dotted(1, 0, {cell_.high.x, low.y}, {cell_.high.x, high.y});
        dotted(0, -1, {low.x, cell_.high.y}, {high.x, cell_.high.y});
        dotted(0, 1, {low.x, cell_.low.y}, {high.x, cell_.low.y});
    }

    void crosses() {
        for (const Point p : cross_points(cell_)) {
            pen_.line(Role::registration, p - Point{cross_arm, {}}, p + Point{cross_arm, {}}, style().hair);
            pen_.line(Role::registration, p - Point{{}, cross_arm}, p + Point{{}, cross_arm}, style().hair);
            pen_.stroke(Role::registration, Path::circle(p, ring_radius), style().line);
            const Point reach{cross_arm, cross_arm};
            labels_.taken().take(level_box({p - reach, p + reach}));
        }
    }

    /// The parts of a line of the drawing that this page shows.
    std::vector<Path> shown(const Path& path) const { return geom::clip(path.moved(shift()), window_); }

    void wood() {
        for (const TemplateLine& line : context_.drawing.lines) {
            for (const Path& part : shown(line.path)) {
                draw_template_line(pen_, line.what, part);
                labels_.taken().take(part);
            }
        }
    }

    void numerals() {
        for (const Numeral& numeral : context_.drawing.numerals) {
            const Point centre = numeral.centre + shift();
            const TurnedBox box = numeral.block.box(centre, numeral.along, 2_pt);
            const Rect bounds = box.bounds();
            if (!window_.contains(bounds.low) || !window_.contains(bounds.high)) continue;
            numeral.block.draw(pen_, Role::numeral, centre, numeral.along);
            // A name in the same row must not read as part of the number.
            labels_.taken().take({box.centre, box.along, box.half_length + 6_pt, box.half_height});
        }
    }

    void set_out(Role role, const Path& path, Dash dash) {
        for (const Path& part : shown(path)) {
            pen_.stroke(role, part, style().hair, dash);
            labels_.taken().take(part);
        }
    }

    /// An ordinate on a dotted line would hide where to cut: the dotted line stands for both.
    bool on_joint(Length x) const {
        const auto at = [&](Length side, int across) {
            return measure::abs(x - side) < 1e-6_mm &&
                   context_.tiling.printed_at(tile_.column + across, tile_.row) != nullptr;
        };
        return at(tile_.cell.low.x, -1) || at(tile_.cell.high.x, 1);
    }

    void set_out_lines() {
        for (const Ordinate& ordinate : context_.drawing.ordinates)
            if (!on_joint(ordinate.from_centre))
                for (const Path& piece : ordinate.pieces) set_out(Role::dimension, piece, Dash::dashed);
        for (const Path& piece : context_.drawing.centre_line) set_out(Role::centre, piece, Dash::dash_dot);
        set_out(Role::dimension, context_.drawing.spring_line, Dash::dashed);
    }

    const TemplateContext& context_;
    const Tile& tile_;
    Pen pen_;
    Rect cell_;
    Rect window_;
    Labels labels_;
};

}  // namespace

Draft template_tile(const TemplateContext& context, const Tile& tile) {
    Draft draft = new_draft(context.plan, "template", Orientation::landscape);
    draft.page.piece = context.piece.id;
    draft.tag = context.piece.id;
    draft.title = context.kit.words("template.title_tile", {{"tile", tile.name()}});
    draft.subtitle =
        context.kit.words("template.subtitle_tile", {{"what", template_content(context.piece, context.kit)}});
    draft.scale = Scale::full;
    TilePage(context, tile, draft).draw();
    return draft;
}

std::string template_content(const plan::Piece& piece, const Kit& kit) {
    return kit.words(piece.casing ? "template.liner_and_casing" : "template.liner");
}

}  // namespace kerfpacket::sheets
