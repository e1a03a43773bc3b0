#include "sheets/templates/template_half.h"

#include <algorithm>

namespace kerfpacket::sheets {
namespace {

constexpr Length far = Length::inches(2000);
constexpr Length flip_cross_inset = 0.5_in;  // from the cell's edge
constexpr Length cross_apart = 0.75_in;      // from a joint's cross: arms that meet hide which is which
constexpr Length hatch_gap = 9_pt;
constexpr Rect left_of_centre{{-far, -far}, {Length(), far}};

bool at_left(Point p) { return p.x < 1e-6_mm; }

/// The stretches of the centre line that printed cells show, as a whole: from the lowest to the highest.
std::pair<Length, Length> centre_shown(const Tiling& tiling) {
    const Path centre = Path::line({{}, -far}, {{}, far});
    Length low = far;
    Length high = -far;
    for (const Tile& tile : tiling.tiles()) {
        if (tile.blank) continue;
        for (const Path& part : geom::clip(centre.turned(-tile.turn), tile.cell)) {
            const Path upright = part.turned(tile.turn);
            low = std::min({low, upright.start().y, upright.end().y});
            high = std::max({high, upright.start().y, upright.end().y});
        }
    }
    return {low, high};
}

/// On the centre line, from `first` on by steps: the first place clear of the crosses on which sheets are joined.
Point flip_cross(Length first, Length step, const Tiling& tiling) {
    const auto near = [](Point a, Point b) { return geom::distance(a, b) < cross_apart; };
    Point place{{}, first};
    const auto hidden = [&](const Joint& joint) { return near(joint.inner, place) || near(joint.outer, place); };
    while (std::any_of(tiling.joints().begin(), tiling.joints().end(), hidden)) place.y += step;
    return place;
}

/// 45-degree strokes over what lies beyond the centre line.
void hatch(TemplateDrawing& drawing, Length low, Length high, Length width) {
    const Rect beyond{{3_pt, low}, {beyond_flip, high}};
    for (Length y = low - beyond_flip; y < high; y += hatch_gap)
        for (Path& part : geom::clip(Path::line({{}, y}, {high - low, y + (high - low)}), beyond))
            drawing.lines.push_back({std::move(part), Role::hatch, width});
}

void keep_left(std::vector<Path>& paths) {
    std::vector<Path> kept;
    for (const Path& path : paths)
        for (Path& part : geom::clip(path, left_of_centre)) kept.push_back(std::move(part));
    paths = std::move(kept);
}

template <class List, class Gone>
void drop(List& list, Gone gone) {
    list.erase(std::remove_if(list.begin(), list.end(), gone), list.end());
}

/// What is left to name of a line; a name whose lines have all gone goes too.
void keep_left(std::vector<Name>& names) {
    for (Name& name : names) {
        for (Name::Choice& choice : name.choices) choice.path = left_half(choice.path);
        drop(name.choices, [](const Name::Choice& c) { return c.path.empty(); });
        if (!name.last_resort) continue;
        name.last_resort->path = left_half(name.last_resort->path);
        if (name.last_resort->path.empty()) name.last_resort.reset();
    }
    drop(names, [](const Name& n) { return n.choices.empty(); });
}

}  // namespace

std::vector<DrawnLine> left_half(const std::vector<DrawnLine>& lines) {
    std::vector<DrawnLine> half;
    for (const DrawnLine& line : lines)
        for (Path& part : geom::clip(line.path, left_of_centre)) {
            half.push_back(line);
            half.back().path = std::move(part);
        }
    return half;
}

Path left_half(const Path& path) {
    auto parts = geom::clip(path, left_of_centre);
    return parts.empty() ? Path() : std::move(parts.front());
}

void keep_left_half(TemplateDrawing& drawing, const Pen& pen, const Tiling& tiling) {
    drawing.lines = left_half(drawing.lines);
    drop(drawing.figures, [](const Figure& f) { return !at_left(f.centre); });
    drop(drawing.ordinates, [](const Ordinate& o) { return !at_left(o.top); });
    keep_left(drawing.base_lines);
    keep_left(drawing.names);
    const auto [low, high] = centre_shown(tiling);
    const Path centre = Path::line({{}, low}, {{}, high});
    const fonts::Style& style = pen.kit().style;
    hatch(drawing, low, high, style.fine);
    drawing.flip_crosses = {flip_cross(low + flip_cross_inset, 6_pt, tiling),
                            flip_cross(high - flip_cross_inset, -6_pt, tiling)};
    const auto words = [&](std::string_view key) {
        return Block(pen, {{pen.kit().words(key), {Face::bold, style.text}}});
    };
    // Between a casing's edge and the wall there is often room for no more than the two words.
    const std::vector<Stand> stands{{Beside::left, 5_pt}, {Beside::left, 20_pt}};
    drawing.names.insert(drawing.names.begin(), Name{{{centre, words("template.flip_here"), stands},
                                                      {centre, words("template.flip_here_short"), stands}}});
}

}  // namespace kerfpacket::sheets
