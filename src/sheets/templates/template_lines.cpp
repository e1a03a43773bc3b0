#include "sheets/templates/template_lines.h"

#include <algorithm>
#include <array>

namespace kerfpacket::sheets {
namespace {

using namespace measure::literals;

using geom::Direction;

constexpr Length same_place = 1e-3_mm;

bool wall_measured(const plan::ArchLines& arch) {
    return measure::abs(arch.wall_springs[0].y + arch.wall_springs[1].y) < same_place;
}

void add_all(std::vector<TemplateLine>& lines, Line what, const std::vector<Path>& paths) {
    for (const Path& path : paths) lines.push_back({what, path});
}

/// Whether a path, led on backward from its start, comes to a point; else it has passed the point already.
bool runs_toward(Point p, const Path& path) {
    const Point on = path.start() - p;
    const Direction travel = path.segments().front().start_direction();
    return on.x.mm() * travel.x + on.y.mm() * travel.y > same_place.mm();
}

/// The arc from a point on to where a path starts, in the path's direction there.
Path led_to(Point from, const Path& path) {
    const geom::Angle chord = geom::direction(from, path.start()).angle();
    const geom::Angle end = path.segments().front().start_direction().angle();
    return Path::arc(from, path.start(), (end - chord) * 2);
}

/// The square end of a liner where `wall` and `finish` start, with what the finished line lacks to reach it.
void add_square_end(std::vector<TemplateLine>& lines, const Path& wall, const Path& finish, Length thickness,
                    bool from_wall) {
    const Length across = geom::distance(wall.start(), finish.start());
    if (measure::abs(across - measure::abs(thickness)) < same_place) {
        lines.push_back({Line::liner_end, Path::line(wall.start(), finish.start())});
        return;
    }
    const Path& measured = from_wall ? wall : finish;
    const Point outward = measured.segments().front().start_direction().left() * thickness;
    if (from_wall) {
        const Point seen = wall.start() - outward;
        if (runs_toward(seen, finish)) lines.push_back({Line::finish, led_to(seen, finish)});
        lines.push_back({Line::liner_end, Path::line(wall.start(), seen)});
    } else {
        lines.push_back({Line::liner_end, Path::line(finish.start() + outward, finish.start())});
    }
}

bool has_mitre(const plan::ArchLines& arch, Point on_wall) {
    return std::any_of(arch.liner_mitres.begin(), arch.liner_mitres.end(),
                       [&](const Path& m) { return geom::distance(m.start(), on_wall) < same_place; });
}

}  // namespace

std::vector<TemplateLine> template_lines(const plan::ArchLines& arch) {
    // Uprights come in pairs, left and right, of wall, finish, casing inside, casing outside.
    constexpr std::array upright{Line::wall, Line::finish, Line::casing_inside, Line::casing_outside};
    std::vector<TemplateLine> lines{{Line::wall, arch.wall}, {Line::finish, arch.finish}};
    const Length thickness = arch.finish_springs[0].x - arch.wall_springs[0].x;
    const bool from_wall = wall_measured(arch);
    // Seen from the right end, the wall lies on the other side of travel.
    if (!has_mitre(arch, arch.wall.start())) add_square_end(lines, arch.wall, arch.finish, thickness, from_wall);
    if (!has_mitre(arch, arch.wall.end()))
        add_square_end(lines, arch.wall.reversed(), arch.finish.reversed(), -thickness, from_wall);
    add_all(lines, Line::liner_end, arch.liner_mitres);
    if (arch.casing_outside) lines.push_back({Line::casing_outside, *arch.casing_outside});
    if (arch.casing_inside) lines.push_back({Line::casing_inside, *arch.casing_inside});
    for (std::size_t i = 0; i < arch.leg_lines.size(); ++i) lines.push_back({upright.at(i / 2), arch.leg_lines[i]});
    add_all(lines, Line::mitre, arch.mitres);
    add_all(lines, Line::joint, arch.segment_joints);
    for (const plan::KerfTick& tick : arch.kerf_ticks) lines.push_back({Line::kerf_tick, tick.line});
    return lines;
}

std::array<Point, 2> measured_springs(const plan::ArchLines& arch) {
    return {arch.measured.start(), arch.measured.end()};
}

}  // namespace kerfpacket::sheets
