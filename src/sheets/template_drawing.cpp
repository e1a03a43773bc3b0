#include "sheets/template_drawing.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <optional>

namespace kerfpacket::sheets {
namespace {

constexpr Length numeral_gap = Length::points(4);
constexpr Length beyond_curve = Length::points(8);

/// The wall's arc with what it lacks to meet the leg lines: where the seen face was measured, the wall is a parallel
/// that ends short of its corners.
Path to_corners(const Path& wall, Point left, Point right) {
    if (measure::abs(right.x - wall.end().x) < 1e-6_mm) return wall;
    const geom::Segment first = wall.segments().front();
    const Point centre = first.centre();
    const auto turn = [&](Point from, Point to) {
        return geom::direction(centre, to).angle() - geom::direction(centre, from).angle();
    };
    std::vector<geom::Segment> segments = wall.segments();
    segments.insert(segments.begin(), {left, wall.start(), turn(left, wall.start())});
    segments.push_back({wall.end(), right, turn(wall.end(), right)});
    return Path(std::move(segments));
}

void add_all(std::vector<TemplateLine>& lines, Line what, const std::vector<Path>& paths) {
    for (const Path& path : paths) lines.push_back({what, path});
}

/// The parts of the upright from the spring line to `top` that cross no number.
std::vector<Path> open_upright(Length x, Length top, const std::vector<Numeral>& numerals) {
    std::vector<std::pair<Length, Length>> gaps;
    for (const Numeral& numeral : numerals) {
        const Rect box = numeral.block.box(numeral.centre, numeral.along, 1_pt).bounds();
        if (box.low.x < x && x < box.high.x) gaps.emplace_back(box.low.y, box.high.y);
    }
    std::sort(gaps.begin(), gaps.end());
    std::vector<Path> pieces;
    Length from;
    for (const auto& [low, high] : gaps) {
        if (low > from && low < top) pieces.push_back(Path::line({x, from}, {x, low}));
        from = std::max(from, high);
    }
    if (from < top) pieces.push_back(Path::line({x, from}, {x, top}));
    return pieces;
}

/// Where a tick's number may stand: beside and beyond the tick's outer end. A number steps aside only while its own
/// tick stays the nearest.
std::vector<Point> numeral_places(const std::vector<Path>& ticks, std::size_t i, Length width) {
    std::vector<Point> places{{{}, numeral_gap}, {{}, numeral_gap + 8_pt}};
    const std::size_t next = i + 1 < ticks.size() ? i + 1 : i - 1;
    const Length aside = width / 2 + 3_pt;
    if (i > 0 && aside < geom::distance(ticks[i].start(), ticks[next].start()) / 2)
        for (const Length x : {aside, -aside}) places.push_back({x, numeral_gap});
    places.push_back({{}, numeral_gap + 16_pt});
    return places;
}

/// Finds places for kerf numbers: clear of all other lines and of every ring, and of the lines between tiles if it can.
class NumberPlaces {
public:
    NumberPlaces(const std::vector<TemplateLine>& lines, const Tiling& tiling) {
        for (const TemplateLine& line : lines) taken_.take(line.path);
        for (const Tile& tile : tiling.tiles()) {
            for (const Point p : cross_points(tile.cell)) taken_.take(Path::circle(p, ring_radius));
            between_tiles_.take(Path::rectangle(tile.cell));
        }
    }

    /// The first of these places that is free, given as box centres.
    std::optional<Point> take(const Block& block, const std::vector<Point>& centres, Direction along) {
        for (const bool clear_of_joints : {true, false}) {
            for (const Point centre : centres) {
                const TurnedBox box = block.box(centre, along, 1_pt);
                if (!taken_.is_free(box) || (clear_of_joints && !between_tiles_.is_free(box))) continue;
                taken_.take(box);
                return centre;
            }
        }
        return std::nullopt;
    }

private:
    Occupancy taken_;
    Occupancy between_tiles_;
};

/// Every fifth kerf.
std::vector<Numeral> number_kerfs(const Pen& pen, const plan::Piece& piece, NumberPlaces free) {
    std::vector<Numeral> numerals;
    const auto& ticks = std::get<plan::ArchLines>(piece.lines).kerf_ticks;
    for (std::size_t i = 0; i < ticks.size(); ++i) {
        const int n = piece.kerfs.at(i).n;
        if (n % 5 != 0) continue;
        const Face face = n % 10 == 0 ? Face::condensed_bold : Face::condensed;
        const Block block(pen, {{std::to_string(n), {face, pen.kit().style.strong}}});
        const Direction out = geom::direction(ticks[i].end(), ticks[i].start());
        const Direction along{out.y, -out.x};
        std::vector<Point> centres = numeral_places(ticks, i, block.width());
        for (Point& p : centres) p = ticks[i].start() + out * (p.y + block.height() / 2) + along * p.x;
        if (const auto centre = free.take(block, centres, along)) numerals.push_back({block, *centre, along});
    }
    return numerals;
}

std::vector<Ordinate> measure_ordinates(const Path& to, const Tape& tape, const std::vector<Numeral>& numerals) {
    std::vector<Ordinate> ordinates;
    const Length step = ordinate_step(tape);
    const Length reach = to.end().x - 0.25_in;
    const geom::Segment arc = to.segments()[to.segments().size() / 2];
    const Point centre = arc.centre();
    for (int i = 1; step * i <= reach; ++i) {
        for (const int sign : {-1, 1}) {
            const Length x = step * (sign * i);
            const double square = (arc.radius() - x).mm() * (arc.radius() + x).mm();
            const Length height = centre.y + Length::mm(std::sqrt(std::max(0.0, square)));
            if (height < 0.5_in) continue;
            ordinates.push_back({x, height, open_upright(x, height + beyond_curve, numerals)});
        }
    }
    return ordinates;
}

}  // namespace

std::vector<TemplateLine> template_lines(const plan::ArchLines& arch) {
    // Uprights come in pairs, left and right, of wall, finish, casing inside, casing outside.
    constexpr std::array upright{Line::wall, Line::finish, Line::casing_inside, Line::casing_outside};
    std::vector<TemplateLine> lines;
    lines.push_back({Line::wall, to_corners(arch.wall, arch.leg_lines.at(0).start(), arch.leg_lines.at(1).start())});
    lines.push_back({Line::finish, arch.finish});
    lines.push_back({Line::liner_end, Path::line(arch.wall.start(), arch.finish.start())});
    lines.push_back({Line::liner_end, Path::line(arch.wall.end(), arch.finish.end())});
    if (arch.casing_outside) lines.push_back({Line::casing_outside, *arch.casing_outside});
    if (arch.casing_inside) lines.push_back({Line::casing_inside, *arch.casing_inside});
    for (std::size_t i = 0; i < arch.leg_lines.size(); ++i) lines.push_back({upright.at(i / 2), arch.leg_lines[i]});
    add_all(lines, Line::mitre, arch.mitres);
    add_all(lines, Line::joint, arch.segment_joints);
    add_all(lines, Line::kerf_tick, arch.kerf_ticks);
    return lines;
}

std::vector<Path> paths_of(const std::vector<TemplateLine>& lines) {
    std::vector<Path> paths;
    paths.reserve(lines.size());
    for (const TemplateLine& line : lines) paths.push_back(line.path);
    return paths;
}

void draw_template_line(Pen& pen, Line what, Path path) {
    const auto& style = pen.kit().style;
    switch (what) {
        case Line::wall: pen.stroke(Role::outline, std::move(path), style.line, Dash::dash_dot); break;
        case Line::finish:
        case Line::liner_end: pen.stroke(Role::outline, std::move(path), style.line); break;
        case Line::casing_outside:
        case Line::casing_inside: pen.stroke(Role::outline, std::move(path), style.heavy); break;
        case Line::mitre:
        case Line::joint: pen.stroke(Role::joint, std::move(path), style.heavy); break;
        case Line::kerf_tick: pen.stroke(Role::tick, std::move(path), style.hair); break;
    }
}

const Path& ordinate_line(const plan::ArchLines& arch) {
    return arch.casing_outside ? *arch.casing_outside : arch.wall;
}

Length ordinate_step(const Tape& tape) { return tape.unit() == measure::Unit::inch ? 3_in : 75_mm; }

TemplateDrawing template_drawing(const Pen& pen, const plan::Piece& piece, const Tape& tape, const Tiling& tiling) {
    const auto& arch = std::get<plan::ArchLines>(piece.lines);
    TemplateDrawing drawing;
    drawing.lines = template_lines(arch);
    drawing.numerals = number_kerfs(pen, piece, {drawing.lines, tiling});
    drawing.ordinates = measure_ordinates(ordinate_line(arch), tape, drawing.numerals);
    const Rect bounds = tiling.bounds();
    drawing.centre_line = open_upright({}, ordinate_line(arch).bounds().high.y + beyond_curve * 2, drawing.numerals);
    const Length reach = std::min(-arch.leg_lines.back().start().x, arch.leg_lines.front().start().x) - 0.5_in;
    drawing.spring_line = Path::line({std::max(reach, bounds.low.x), {}}, {std::min(-reach, bounds.high.x), {}});
    return drawing;
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
