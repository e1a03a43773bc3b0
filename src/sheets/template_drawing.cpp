#include "sheets/template_drawing.h"

#include <algorithm>

namespace kerfpacket::sheets {

std::vector<Path> paths_of(const std::vector<DrawnLine>& lines) {
    std::vector<Path> paths;
    paths.reserve(lines.size());
    for (const DrawnLine& line : lines) paths.push_back(line.path);
    return paths;
}

std::optional<Length> height_over(const Path& curve, Length x) {
    std::optional<Length> highest;
    const auto look_at = [&](Length height) { highest = highest ? std::max(*highest, height) : height; };
    for (const geom::Segment& s : curve.segments()) {
        // Where two segments join on the upright, rounding may hide the crossing from both.
        for (const Point end : {s.from, s.to})
            if (measure::abs(end.x - x) < 1e-6_mm) look_at(end.y);
        for (const double f : geom::crossings(s, {x, {}}, {0, 1})) look_at(s.point(f).y);
    }
    return highest;
}

std::vector<Path> open_upright(Length x, Length foot, Length top, const std::vector<Figure>& figures) {
    std::vector<std::pair<Length, Length>> gaps;
    for (const Figure& figure : figures) {
        const Rect box = figure.block.box(figure.centre, figure.along, 1_pt).bounds();
        if (box.low.x < x && x < box.high.x) gaps.emplace_back(box.low.y, box.high.y);
    }
    std::sort(gaps.begin(), gaps.end());
    std::vector<Path> pieces;
    Length from = foot;
    for (const auto& [low, high] : gaps) {
        if (low > from && low < top) pieces.push_back(Path::line({x, from}, {x, low}));
        from = std::max(from, high);
    }
    if (from < top) pieces.push_back(Path::line({x, from}, {x, top}));
    return pieces;
}

std::vector<std::string> broken(const Pen& pen, const std::string& text, const Type& type, Length width) {
    std::vector<std::string> lines;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = std::min(text.find(' ', from), text.size());
        const std::string word = text.substr(from, end - from);
        if (!lines.empty() && pen.width(lines.back() + " " + word, type) <= width)
            lines.back().append(" ").append(word);
        else lines.push_back(word);
        from = end + 1;
    }
    return lines;
}

std::vector<Point> cross_points(const Rect& cell) {
    const Point mid = geom::middle(cell.low, cell.high);
    std::vector<Point> points;
    for (const Length x : {cell.low.x, mid.x, cell.high.x})
        for (const Length y : {cell.low.y, mid.y, cell.high.y})
            if (x != mid.x || y != mid.y) points.push_back({x, y});
    return points;
}

}  // namespace kerfpacket::sheets
