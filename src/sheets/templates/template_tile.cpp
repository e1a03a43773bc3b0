#include "sheets/templates/template_tile.h"

#include <algorithm>

#include "measure/require.h"
#include "sheets/layout/furniture.h"
#include "sheets/templates/template_marks.h"
#include "sheets/templates/template_names.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length cross_arm = Length::points(16);
constexpr Length beside_tick = Length::points(2.5);  // a joint's line nearer to a tick all along would hide it

class TilePage {
public:
    TilePage(const TemplateContext& context, const Tile& tile, Draft& draft)
        : context_(context),
          tile_(tile),
          draft_(draft),
          pen_(draft.page, context.kit),
          cell_(cell_on_page()),
          window_(cell_.grown(context.tiling.overlap())),
          labels_(pen_, cell_.grown(-1_pt), style().fine),
          code_white_(draft.scale == Scale::full && !draft.roll
                          ? sheet_code_place(pen_.page_width(), pen_.page_height()) -
                                Point{sheet_code_gap, sheet_code_gap}
                          : Point{pen_.page_width(), pen_.page_height()}) {}

    void draw() {
        const Scope figure =
            pen_.figure(context_.kit.words("figure.tile", {{"title", draft_.title}, {"piece", context_.titles.piece}}));
        cell_lines();
        crosses();
        wood();
        figures();
        set_out_lines();
        TemplateMarks marks(context_, tile_, pen_, labels_, cell_, shift());
        marks.neighbours();
        marks.grain();
        // How tiles join must find room; what a line is called is said on the next tile too.
        const bool joining = marks.tells_joining();
        if (joining) marks.note();
        if (!tile_.in_grid && !context_.drawing.joints_named) marks.cross_names();
        TemplateNames(context_.drawing, labels_, cell_, shift()).draw();
        marks.coordinate();
        if (!joining) marks.note();
        marks.small_map(header_end());
    }

private:
    const fonts::Style& style() const { return context_.kit.style; }
    Point shift() const { return cell_.low - tile_.cell.low; }

    /// Where title and subtitle of the header end at the right.
    Length header_end() const {
        const Length tag = tag_width(pen_, draft_.tag) + 9_pt;
        return side_margin + tag + pen_.width(draft_.title, {Face::bold, style().title}) + 12_pt +
               pen_.width(draft_.subtitle, {Face::regular, style().text}) + 10_pt;
    }

    /// In the middle between the sides, and between the header's rule and the check bar.
    Rect cell_on_page() const {
        const CellSize cell = context_.tiling.cell();
        const Length lowest = check_bar_height + 9_pt;
        const Length highest = pen_.from_top(63_pt);
        const Point low{(pen_.page_width() - cell.width) / 2, (lowest + highest - cell.height) / 2};
        return {low, {low.x + cell.width, low.y + cell.height}};
    }

    /// Dotted where another tile joins; at the other sides nothing is cut. Open where the line would hide a number or a
    /// tick.
    void cell_lines() {
        for (const Path& line : context_.tiling.joint_lines(tile_)) {
            for (const Path& part : open_line(line.moved(shift()), hidden_by(line)))
                pen_.stroke(Role::registration, part, style().line, Dash::dotted);
            // Along a curve the lines run through the sheet, not at its edge.
            if (!tile_.in_grid) labels_.taken().take(line.moved(shift()));
        }
    }

    /// Places on the page of what a joint line would hide.
    std::vector<Rect> hidden_by(const Path& line) const {
        std::vector<Rect> places;
        for (const Figure& figure : context_.drawing.figures)
            places.push_back(figure.block.box(figure.centre + shift(), figure.along, 1_pt).bounds());
        const Direction out = line.segments().front().start_direction().left();
        const auto off = [&](Point p) {
            const Point from = p - line.start();
            return measure::abs(from.x * out.x + from.y * out.y);
        };
        for (const DrawnLine& drawn : context_.drawing.lines)
            if (drawn.role == Role::tick && std::max(off(drawn.path.start()), off(drawn.path.end())) < beside_tick)
                places.push_back(drawn.path.moved(shift()).bounds().grown(beside_tick));
        return places;
    }

    void crosses() {
        for (const Point p : context_.tiling.crosses(tile_)) cross(p + shift());
        for (const Point p : context_.drawing.flip_crosses)
            if (window_.grown(-cross_arm).contains(p + shift())) cross(p + shift());
    }

    void cross(Point p) {
        pen_.line(Role::registration, p - Point{cross_arm, {}}, p + Point{cross_arm, {}}, style().fine);
        pen_.line(Role::registration, p - Point{{}, cross_arm}, p + Point{{}, cross_arm}, style().fine);
        pen_.stroke(Role::registration, Path::circle(p, ring_radius), style().line);
        const Point reach{cross_arm, cross_arm};
        labels_.taken().take(level_box({p - reach, p + reach}));
    }

    /// The parts of a line of the drawing that this page shows.
    std::vector<Path> shown(const Path& path) const { return geom::clip(path.moved(shift()), window_); }

    void wood() {
        for (const DrawnLine& line : context_.drawing.lines) {
            for (const Path& part : shown(line.path)) {
                pen_.stroke(line.role, part, line.width, line.dash);
                labels_.taken().take(part);
            }
        }
    }

    void figures() {
        for (const Figure& figure : context_.drawing.figures) {
            const Point centre = figure.centre + shift();
            const TurnedBox box = figure.block.box(centre, figure.along, 2_pt);
            const Rect bounds = box.bounds();
            if (!window_.contains(bounds.low) || !window_.contains(bounds.high)) continue;
            // What is another tile's, and too near the code, stands there.
            if (!cell_.contains(centre) && bounds.high.x > code_white_.x && bounds.high.y > code_white_.y) continue;
            figure.block.draw(pen_, figure.role, centre, figure.along);
            // A name in the same row must not read as part of the number.
            labels_.taken().take({box.centre, box.along, box.half_length + 6_pt, box.half_height});
        }
    }

    void set_out(Role role, const Path& path, Dash dash) {
        for (const Path& part : shown(path)) {
            pen_.stroke(role, part, style().fine, dash);
            labels_.taken().take(part);
        }
    }

    /// An ordinate on a dotted line would hide where to cut: the dotted line stands for both.
    bool on_joint(Length x) const {
        if (!tile_.in_grid) return false;
        const auto at = [&](Length side, int across) {
            return measure::abs(x - side) < 1e-6_mm &&
                   context_.tiling.printed_at(tile_.column + across, tile_.row) != nullptr;
        };
        return at(tile_.cell.low.x, -1) || at(tile_.cell.high.x, 1);
    }

    void set_out_lines() {
        for (const Ordinate& ordinate : context_.drawing.ordinates)
            if (!on_joint(ordinate.top.x))
                for (const Path& piece : ordinate.pieces) set_out(Role::dimension, piece, Dash::dashed);
        for (const Path& piece : context_.drawing.centre_line) set_out(Role::centre, piece, Dash::dash_dot);
        for (const Path& line : context_.drawing.base_lines) set_out(Role::dimension, line, Dash::dashed);
    }

    const TemplateContext& context_;
    const Tile& tile_;
    const Draft& draft_;
    Pen pen_;
    Rect cell_;
    Rect window_;
    Labels labels_;
    Point code_white_;  ///< lower left of the white around the sheet's code
};

}  // namespace

Draft template_tile(const TemplateContext& context, const Tile& tile) {
    const TemplateTitles& titles = context.titles;
    const CellSize cell = context.tiling.cell();
    Draft draft = new_draft(context.plan, titles.sheet, cell.upright ? Orientation::portrait : Orientation::landscape,
                            Use::templates, cell.width + beside_cell);
    draft.page.piece = titles.piece;
    draft.tag = titles.piece;
    fonts::Words::Values values = titles.title_values;
    values.emplace_back("tile", tile.name());
    draft.title = context.kit.words(titles.title_key, values);
    draft.subtitle = titles.subtitle;
    draft.scale = Scale::full;
    TilePage(context, tile, draft).draw();
    return draft;
}

void add_tiles(Drafts& drafts, const TemplateContext& context) {
    for (const Tile& tile : context.tiling.tiles()) {
        if (tile.blank) continue;
        if (tile.in_grid) {
            drafts.push_back(template_tile(context, tile));
            continue;
        }
        const TemplateDrawing turned = context.drawing.turned(-tile.turn);
        drafts.push_back(
            template_tile({context.plan, context.kit, context.tape, context.tiling, turned, context.titles}, tile));
    }
}

std::string first_tile(const Tiling& tiling) {
    if (tiling.way() == job::Sheets::along) return tiling.tiles().front().name();
    const Tile* best = nullptr;
    const Length middle = (tiling.bounds().low.x + tiling.bounds().high.x) / 2;
    const auto off = [&](const Tile& t) { return measure::abs((t.cell.low.x + t.cell.high.x) / 2 - middle); };
    for (const Tile& tile : tiling.tiles()) {
        if (tile.blank || (best != nullptr && tile.row != best->row)) continue;
        if (best == nullptr || off(tile) < off(*best) - 0.5_mm) best = &tile;
    }
    measure::require(best != nullptr, "a template prints at least one tile");
    return best->name();
}

}  // namespace kerfpacket::sheets
