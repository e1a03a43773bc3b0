#include "sheets/templates/template_grid.h"

#include <algorithm>
#include <cmath>

#include "sheets/drawings/small_drawing.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length span_height = Length::points(30);   // the dimension under the tiles
constexpr Length heads_height = Length::points(10);  // letters over columns too narrow for names

class GridDrawing {
public:
    GridDrawing(Pen& pen, const TemplateContext& context, const MapSpan& span, const Rect& space)
        : pen_(pen),
          context_(context),
          span_(span),
          left_(space.low.x),
          right_(space.high.x),
          small_(fitted(context, space)),
          labels_(pen, small_.at(context.tiling.bounds()).grown(12_pt)),
          drawn_(small_.at(context.tiling.bounds())) {}

    Length draw() {
        grid();
        lines();
        names();
        return span();
    }

private:
    const fonts::Style& style() const { return context_.kit.style; }
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return context_.kit.words(key, values);
    }
    static Type regular(Length size) { return {Face::regular, size}; }
    static Type bold(Length size) { return {Face::bold, size}; }

    static SmallDrawing fitted(const TemplateContext& context, const Rect& space) {
        const Rect bounds = context.tiling.bounds();
        const double scale = std::min((space.width() - 24_pt) / bounds.width(),
                                      (space.height() - span_height - heads_height) / bounds.height());
        const Length left = (space.low.x + space.high.x - bounds.width() * scale) / 2;
        return {bounds.low, {left, space.high.y - heads_height - bounds.height() * scale}, scale};
    }

    /// The span under the tiles; returns the height below which the page is free.
    Length span() {
        const Length level = drawn_.low.y - 18_pt;
        std::vector<Point> ends;
        for (const Point end : {span_.left, span_.right}) {
            const Point spring = small_.at(end);
            pen_.line(Role::dimension, {spring.x, spring.y - 3_pt}, {spring.x, level - 5_pt}, style().fine);
            ends.push_back({spring.x, level});
        }
        const Type type = bold(style().text);
        const bool fits = pen_.width(span_.figure, type) + 20_pt < ends[1].x - ends[0].x;
        pen_.dimension(ends[0], ends[1], fits ? span_.figure : std::string(), type);
        if (fits) return level - 8_pt;
        pen_.text(Role::dimension, {(ends[0].x + ends[1].x) / 2, level - 17_pt}, span_.figure, type.centred());
        return level - 20_pt;
    }

    void grid() {
        const Rect bounds = drawn_;
        if (context_.tiling.printed() < context_.tiling.tiles().size()) blank_key(bounds);
        for (const Tile& tile : context_.tiling.tiles()) {
            if (tile.blank) pen_.hatch_around(small_.at(tile.cell), 8_pt, style().fine, {});
            pen_.stroke(Role::registration, small_.at(tile.outline()), style().fine);
        }
    }

    Length heads_above() const { return small_cells() || small_sheets() ? heads_height : Length(); }

    /// Over the grid's left side; where the words over the centre line would meet it there, further left or at the
    /// right.
    void blank_key(const Rect& grid) {
        const Type type = regular(style().small);
        const std::string key = words("template.blank_key");
        const Length base = grid.high.y + 8_pt + heads_above();
        Length end = right_;  // of what is free at the left
        if (const std::optional<Length>& centre = context_.drawing.centre)
            end = small_.at(Point{*centre, {}}).x - pen_.width(words("template.centre_line"), bold(style().small)) / 2;
        for (const Length from : {grid.low.x, left_}) {
            if (from + pen_.width(key, type) + 8_pt > end) continue;
            pen_.text(Role::text, {from, base}, key, type);
            return;
        }
        pen_.text(Role::text, {right_, base}, key, type.at_right());
    }

    void lines() {
        for (const DrawnLine& line : context_.drawing.lines) {
            if (line.width_on_map == Length()) continue;
            const Path path = small_.at(line.path);
            pen_.stroke(Role::outline, path, line.width_on_map);
            labels_.taken().take(path);
        }
        for (const Path& line : context_.drawing.base_lines) {
            const Path base = small_.at(line);
            pen_.stroke(Role::dimension, base, style().fine, Dash::dashed);
            labels_.taken().take(base);
        }
        if (context_.drawing.centre) centre_line(*context_.drawing.centre);
    }

    void centre_line(Length at) {
        const Rect bounds = drawn_;
        const Length x = small_.at(Point{at, {}}).x;
        pen_.line(Role::centre, {x, bounds.low.y - 5_pt}, {x, bounds.high.y + 5_pt}, style().fine, Dash::dash_dot);
        const std::string label = words("template.centre_line");
        const Type type = bold(style().small).centred();
        const Length half = pen_.width(label, type) / 2;
        pen_.text(Role::centre, {std::clamp(x, left_ + half, right_ - half), bounds.high.y + 8_pt + heads_above()},
                  label, type);
        labels_.taken().take(Path::line({x, bounds.low.y}, {x, bounds.high.y}));
    }

    /// Each tile's coordinate where the drawing leaves room. Where cells are too small for it, letters stand over the
    /// columns and numbers beside the rows; along a curve, where all do not fit, some numbers are left out.
    void names() {
        if (small_cells()) {
            heads();
            return;
        }
        for (const Tile& tile : context_.tiling.tiles()) {
            if (tile.blank) blank_name(tile);
            else printed_name(tile);
        }
    }

    Type name_type() const { return {Face::condensed_bold, style().tiny}; }

    bool small_cells() const {
        const Tile& last = context_.tiling.tiles().back();
        const Rect cell = small_.at(last.cell);
        return last.in_grid && (cell.width() < pen_.width(last.name(), name_type()) + 6_pt || cell.height() < 20_pt);
    }

    bool small_sheets() const {
        const auto& tiling = context_.tiling;
        return tiling.way() == job::Sheets::along && tiling.cell().height * small_.scale() < 26_pt;
    }

    /// As many heads as stand apart.
    void heads() {
        const auto& tiling = context_.tiling;
        const Rect cell = small_.at(tiling.tiles().front().cell);
        const Length widest = pen_.width(column_head(tiling.columns() - 1), name_type()) + 4_pt;
        const int columns = static_cast<int>(std::ceil(widest / cell.width()));
        const int rows = static_cast<int>(std::ceil(9_pt / cell.height()));
        const Rect bounds = drawn_;
        for (int column = 0; column < tiling.columns(); column += columns)
            pen_.text(Role::registration,
                      {bounds.low.x + cell.width() * (column + 0.5), bounds.high.y + heads_height - 7.5_pt},
                      column_head(column), name_type().centred());
        for (int row = 0; row < tiling.rows(); row += rows)
            pen_.text(Role::registration, {bounds.low.x - 3_pt, bounds.high.y - cell.height() * (row + 0.5) - 2.5_pt},
                      std::to_string(row + 1), name_type().at_right());
    }

    static std::string column_head(int column) {
        std::string name = Tile{column, 0, {}}.name();
        name.pop_back();
        return name;
    }

    void blank_name(const Tile& tile) {
        const Rect cell = small_.at(tile.cell);
        place_name(tile.name(), Role::text, {geom::middle(cell.low, cell.high)},
                   {{Face::regular, style().small}, name_type()}, true);
    }

    void printed_name(const Tile& tile) {
        const Length usual = tile.cell.width() * small_.scale() > 40_pt ? style().small : style().tiny;
        const Direction along = Direction::at(tile.turn);
        const Point low = small_.at(geom::turned(tile.cell.low, tile.turn));
        std::vector<Point> places;
        const Block widest(pen_, {{tile.name(), bold(usual)}});
        // Level, so that a turned cell's name keeps farther from its sides.
        const TurnedBox level = widest.box({}, {1, 0}, 2.5_pt);
        const Length x = level.half_length * std::abs(along.x) + level.half_height * std::abs(along.y);
        const Length y = level.half_length * std::abs(along.y) + level.half_height * std::abs(along.x);
        const Length room_x = std::max(Length(), tile.cell.width() * small_.scale() - x * 2);
        const Length room_y = std::max(Length(), tile.cell.height() * small_.scale() - y * 2);
        for (const double across : {0.0, 1.0, 0.25, 0.5, 0.75})
            for (const double down : {0.0, 1.0, 0.25, 0.5, 0.75})
                places.push_back(low + along * (x + room_x * across) + along.left() * (y + room_y * (1 - down)));
        if (small_sheets()) {
            outside_name(tile);
            return;
        }
        place_name(tile.name(), Role::registration, places, {bold(usual), name_type()}, false);
    }

    /// Of a sheet along a curve that is too small for its number: outside the curve, where there is room.
    void outside_name(const Tile& tile) {
        const Direction out = Direction::at(tile.turn).left();
        const Block name(pen_, {{tile.name(), name_type()}});
        const Point edge =
            small_.at(geom::turned({(tile.cell.low.x + tile.cell.high.x) / 2, tile.cell.high.y}, tile.turn));
        const Length off = name.width() / 2 * std::abs(out.x) + name.height() / 2 * std::abs(out.y) + 2_pt;
        for (const Length more : {0_pt, 4_pt})
            if (labels_.place(Role::registration, name, edge + out * (off + more), {1, 0}, 1_pt)) return;
    }

    /// At the first place that is free; else over lines, on white, where it covers no other words.
    void place_name(const std::string& name, Role role, const std::vector<Point>& places,
                    const std::vector<Type>& types, bool white) {
        for (const bool over_lines : {white, true}) {
            for (const Type& type : types) {
                const Block block(pen_, {{name, type}});
                for (const Point at : places) {
                    const TurnedBox box = block.box(at, {1, 0}, 1_pt);
                    const bool free = words_.is_free(box) && (over_lines || labels_.taken().is_free(box));
                    if (!free) continue;
                    (over_lines ? block.on_white() : block).draw(pen_, role, at);
                    words_.take(box);
                    return;
                }
            }
        }
    }

    Pen& pen_;
    const TemplateContext& context_;
    const MapSpan& span_;
    Length left_;  ///< edges of the space
    Length right_;
    SmallDrawing small_;
    Labels labels_;
    Rect drawn_;       ///< all cells
    Occupancy words_;  ///< names that stand already
};

}  // namespace

Length draw_template_grid(Pen& pen, const TemplateContext& context, const MapSpan& span, const Rect& space) {
    return GridDrawing(pen, context, span, space).draw();
}

}  // namespace kerfpacket::sheets
