#include "sheets/templates/arch_drawing.h"

#include <algorithm>

#include "measure/require.h"
#include "sheets/templates/arch_names.h"
#include "sheets/templates/kerf_numbers.h"
#include "sheets/templates/template_half.h"

namespace kerfpacket::sheets {
namespace {

constexpr Length least_ordinate = 0.5_in;
constexpr Length off_the_ends = 0.25_in;

DrawnLine drawn(const TemplateLine& line, bool casing, const fonts::Style& style) {
    switch (line.what) {
        case Line::wall:
            return {line.path, Role::outline, style.line, Dash::dash_dot, casing ? style.fine : style.line};
        case Line::finish:
        case Line::liner_end: return {line.path, Role::outline, style.line, Dash::solid, style.fine};
        case Line::casing_outside:
        case Line::casing_inside: return {line.path, Role::outline, style.heavy, Dash::solid, style.line};
        case Line::mitre:
        case Line::joint: return {line.path, Role::joint, style.heavy, Dash::solid, style.line};
        case Line::kerf_tick: return {line.path, Role::tick, style.fine, Dash::solid, {}};
    }
    throw measure::Bug("a template line without a look");
}

/// Steps of the ordinates: 3 in, 75 mm.
Length ordinate_step(const Tape& tape) { return tape.unit() == measure::Unit::inch ? 3_in : 75_mm; }

class Ordinates {
public:
    Ordinates(const Pen& pen, const ArchOpening& arch, const Tape& tape, const std::vector<Figure>& figures)
        : pen_(pen), arch_(arch), tape_(tape), figures_(figures), level_(arch.spring_level()) {}

    std::vector<Ordinate> all() {
        const Path& to = arch_.ordinate_line();
        if (const auto top = height_over(to, {})) add({{}, *top}, words("template.at_centre"), {});
        const Rect reach = to.bounds().grown(-off_the_ends);
        const Length step = ordinate_step(tape_);
        for (int i = 1; step * i <= std::max(reach.high.x, -reach.low.x); ++i) {
            for (const int sign : {-1, 1}) {
                const Length x = step * (sign * i);
                const auto top = height_over(to, x);
                if (x < reach.low.x || x > reach.high.x || !top || *top - level_ < least_ordinate) continue;
                add({x, *top}, words("template.from_centre", {{"distance", tape_.with_unit(measure::abs(x))}}),
                    open_upright(x, level_, *top + beyond_curve, figures_));
            }
        }
        return std::move(ordinates_);
    }

private:
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return pen_.kit().words(key, values);
    }

    void add(Point top, const std::string& where, std::vector<Path> pieces) {
        const Length size = pen_.kit().style.small;
        const std::string height = words("template.ordinate", {{"height", tape_.with_unit(top.y - level_)}});
        const Block label(pen_, {{where, {Face::regular, size}}, {height, {Face::bold, size}}});
        ordinates_.push_back({top, std::move(pieces), label});
    }

    const Pen& pen_;
    const ArchOpening& arch_;
    const Tape& tape_;
    const std::vector<Figure>& figures_;
    Length level_;
    std::vector<Ordinate> ordinates_;
};

/// The lower spring's level from side to side; where the other spring stands higher, its own level outside the wall.
std::vector<Path> spring_lines(const plan::ArchLines& arch, Length level, const Rect& bounds) {
    Length left = arch.leg_lines.front().start().x;
    Length right = left;
    for (const Path& upright : arch.leg_lines) {
        left = std::min(left, upright.start().x);
        right = std::max(right, upright.start().x);
    }
    left = std::max(left - 0.5_in, bounds.low.x);
    right = std::min(right + 0.5_in, bounds.high.x);
    std::vector<Path> lines{Path::line({left, level}, {right, level})};
    if (arch.springs_level()) return lines;
    const auto springs = measured_springs(arch);
    if (springs[0].y > springs[1].y) lines.push_back(Path::line({left, springs[0].y}, springs[0] + Point{1_in, {}}));
    else lines.push_back(Path::line(springs[1] - Point{1_in, {}}, {right, springs[1].y}));
    return lines;
}

}  // namespace

std::vector<DrawnLine> drawn_lines(const ArchOpening& arch, const fonts::Style& style) {
    std::vector<DrawnLine> lines;
    for (const TemplateLine& line : template_lines(arch.lines()))
        lines.push_back(drawn(line, arch.lines().casing_outside.has_value(), style));
    return lines;
}

TemplateShape arch_shape(const ArchOpening& arch, const fonts::Style& style) {
    const plan::ArchLines& lines = arch.lines();
    const Point crown = arch.wall_crown();
    Landmarks places{lines.wall.start(), crown, lines.wall.end()};
    if (!lines.kerf_ticks.empty()) {
        const auto from_left = [](const plan::KerfTick& a, const plan::KerfTick& b) {
            return a.line.start().x < b.line.start().x;
        };
        const auto [first, last] = std::minmax_element(lines.kerf_ticks.begin(), lines.kerf_ticks.end(), from_left);
        places.first = first->line.start();
        places.last = last->line.start();
    }
    TemplateShape shape{drawn_lines(arch, style), lines.wall, places, arch.half};
    if (!shape.half) return shape;
    shape.lines = left_half(shape.lines);
    shape.guide = left_half(shape.guide);
    shape.places.last = crown;
    return shape;
}

TemplateDrawing arch_drawing(const Pen& pen, const ArchOpening& arch, const Tape& tape, const Tiling& tiling) {
    TemplateDrawing drawing;
    drawing.lines = drawn_lines(arch, pen.kit().style);
    drawing.figures = number_kerfs(pen, arch.lines().kerf_ticks, {drawing.lines, tiling});
    drawing.ordinates = Ordinates(pen, arch, tape, drawing.figures).all();
    const Length level = arch.spring_level();
    const Length top = arch.ordinate_line().bounds().high.y + beyond_curve * 2;
    drawing.centre = Length();
    drawing.centre_line = open_upright({}, level, top, drawing.figures);
    drawing.base_lines = spring_lines(arch.lines(), level, tiling.bounds());
    drawing.names = arch_names(pen, arch, tape, drawing);
    drawing.note = arch_note(pen.kit(), arch);
    if (arch.half) keep_left_half(drawing, pen, tiling);
    return drawing;
}

}  // namespace kerfpacket::sheets
