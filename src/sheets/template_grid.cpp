#include "sheets/template_grid.h"

#include <algorithm>

#include "sheets/small_drawing.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length span_height = Length::points(30);  // the dimension under the tiles

class GridDrawing {
public:
    GridDrawing(Pen& pen, const TemplateContext& context, const MapSpan& span, const Rect& space)
        : pen_(pen),
          context_(context),
          span_(span),
          left_(space.low.x),
          small_(fitted(context, space)),
          labels_(pen, small_.at(context.tiling.bounds())) {}

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
        const double scale =
            std::min((space.width() - 12_pt) / bounds.width(), (space.height() - span_height) / bounds.height());
        const Point middle = geom::middle(space.low, space.high);
        return {bounds.low, {middle.x - bounds.width() * (scale / 2), space.high.y - bounds.height() * scale}, scale};
    }

    /// The span under the tiles; returns the height below which the page is free.
    Length span() {
        const Length level = labels_.room().low.y - 18_pt;
        std::vector<Point> ends;
        for (const Point end : {span_.left, span_.right}) {
            const Point spring = small_.at(end);
            pen_.line(Role::dimension, {spring.x, spring.y - 3_pt}, {spring.x, level - 5_pt}, style().hair);
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
        const Rect bounds = labels_.room();
        if (context_.tiling.printed() < context_.tiling.tiles().size()) blank_key(bounds);
        for (const Tile& tile : context_.tiling.tiles()) {
            const Rect cell = small_.at(tile.cell);
            if (tile.blank) pen_.hatch(cell, 8_pt);
            pen_.box(Role::registration, cell, style().hair);
        }
    }

    /// Over the grid's left side, or further left where the words over the centre line would meet it.
    void blank_key(const Rect& grid) {
        const Type type = regular(style().small);
        const std::string key = words("template.blank_key");
        const Length centre = pen_.width(words("template.centre_line"), bold(style().small));
        const bool meets = grid.low.x + pen_.width(key, type) + 8_pt > (grid.low.x + grid.high.x - centre) / 2;
        pen_.text(Role::text, {meets ? left_ : grid.low.x, grid.high.y + 8_pt}, key, type);
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
            pen_.stroke(Role::dimension, base, style().hair, Dash::dashed);
            labels_.taken().take(base);
        }
        if (context_.drawing.centre) centre_line(*context_.drawing.centre);
    }

    void centre_line(Length at) {
        const Rect bounds = labels_.room();
        const Length x = small_.at(Point{at, {}}).x;
        pen_.line(Role::centre, {x, bounds.low.y - 5_pt}, {x, bounds.high.y + 5_pt}, style().hair, Dash::dash_dot);
        pen_.text(Role::centre, {x, bounds.high.y + 8_pt}, words("template.centre_line"),
                  bold(style().small).centred());
        labels_.taken().take(Path::line({x, bounds.low.y}, {x, bounds.high.y}));
    }

    /// Each tile's coordinate where the drawing leaves room.
    void names() {
        for (const Tile& tile : context_.tiling.tiles()) {
            const Rect cell = small_.at(tile.cell);
            if (tile.blank) blank_name(tile, cell);
            else printed_name(tile, cell);
        }
    }

    void blank_name(const Tile& tile, const Rect& cell) {
        const Point mid = geom::middle(cell.low, cell.high);
        pen_.text_on_white(Role::text, {mid.x, mid.y - 3_pt}, tile.name(), regular(style().small).centred());
    }

    void printed_name(const Tile& tile, const Rect& cell) {
        const Length usual = cell.width() > 40_pt ? style().small : style().tiny;
        for (const Type& type : {bold(usual), Type{Face::condensed_bold, style().tiny}}) {
            const Block name(pen_, {{tile.name(), type}});
            const Rect centres = cell.grown(-2.5_pt);
            const Length x = name.width() / 2;
            const Length y = name.height() / 2;
            for (const double across : {0.0, 1.0, 0.25, 0.5, 0.75})
                for (const double down : {0.0, 1.0, 0.25, 0.5, 0.75})
                    if (labels_.place(Role::registration, name,
                                      {centres.low.x + x + (centres.width() - x * 2) * across,
                                       centres.high.y - y - (centres.height() - y * 2) * down},
                                      {1, 0}, 1_pt))
                        return;
        }
        pen_.text_on_white(Role::registration, {cell.low.x + 3_pt, cell.high.y - 8_pt}, tile.name(),
                           {Face::condensed_bold, style().tiny});
    }

    Pen& pen_;
    const TemplateContext& context_;
    const MapSpan& span_;
    Length left_;  ///< edge of the space
    SmallDrawing small_;
    Labels labels_;
};

}  // namespace

Length draw_template_grid(Pen& pen, const TemplateContext& context, const MapSpan& span, const Rect& space) {
    return GridDrawing(pen, context, span, space).draw();
}

}  // namespace kerfpacket::sheets
