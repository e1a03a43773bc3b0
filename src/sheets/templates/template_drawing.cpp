#include "sheets/templates/template_drawing.h"

#include <algorithm>

namespace kerfpacket::sheets {

std::vector<Path> paths_of(const std::vector<DrawnLine>& lines) {
    std::vector<Path> paths;
    paths.reserve(lines.size());
    for (const DrawnLine& line : lines) paths.push_back(line.path);
    return paths;
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
    const Length space = pen.width(" ", type);
    std::vector<std::string> lines;
    Length used;
    for (std::size_t from = 0; from < text.size();) {
        const std::size_t end = std::min(text.find(' ', from), text.size());
        const std::string_view word = std::string_view(text).substr(from, end - from);
        const Length room = pen.width(word, type);
        if (!lines.empty() && used + space + room <= width) {
            lines.back().append(" ").append(word);
            used += space + room;
        } else {
            lines.emplace_back(word);
            used = room;
        }
        from = end + 1;
    }
    return lines;
}

std::vector<Path> open_line(const Path& line, const std::vector<Rect>& gaps) {
    std::vector<std::pair<Length, Length>> hidden;
    for (const Rect& gap : gaps)
        for (const Path& part : geom::clip(line, gap))
            hidden.emplace_back(geom::distance(line.start(), part.start()), geom::distance(line.start(), part.end()));
    std::sort(hidden.begin(), hidden.end());
    hidden.emplace_back(line.length(), line.length());
    std::vector<Path> parts;
    Length from;
    for (const auto& [begin, end] : hidden) {
        if (begin > from) parts.push_back(Path::line(line.at(from).point, line.at(begin).point));
        from = std::max(from, end);
    }
    return parts;
}

TemplateDrawing TemplateDrawing::turned(Angle by) const {
    TemplateDrawing all = *this;
    const auto turn = [by](std::vector<Path>& paths) {
        for (Path& path : paths) path = path.turned(by);
    };
    for (DrawnLine& line : all.lines) line.path = line.path.turned(by);
    for (Figure& figure : all.figures) {
        figure.centre = geom::turned(figure.centre, by);
        figure.along = figure.along.turned(by);
    }
    for (Ordinate& o : all.ordinates) {
        o.top = geom::turned(o.top, by);
        turn(o.pieces);
    }
    turn(all.centre_line);
    turn(all.base_lines);
    all.centre.reset();
    const auto turn_choice = [by](Name::Choice& choice) { choice.path = choice.path.turned(by); };
    for (Name& name : all.names) {
        for (Name::Choice& choice : name.choices) turn_choice(choice);
        if (name.last_resort) turn_choice(*name.last_resort);
    }
    if (all.grain) all.grain = all.grain->turned(by);
    for (Point& p : all.flip_crosses) p = geom::turned(p, by);
    return all;
}

}  // namespace kerfpacket::sheets
