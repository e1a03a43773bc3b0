#include "sheets/evidence/limit_chart.h"

#include <algorithm>
#include <array>

#include "bend/limit.h"
#include "sheets/evidence/graph.h"
#include "sheets/layout/furniture.h"
#include "sheets/layout/labels.h"
#include "sheets/words/wording.h"

namespace kerfpacket::sheets {
namespace {

// Room around the chart's frame.
constexpr Length left_room = 46_pt;
constexpr Length right_room = 78_pt;
constexpr Length above = 17_pt;
constexpr Length below = 30_pt;

/// What lies further out than this leaves the chart, so that the rest can be read.
constexpr double far_out = 3;

Length most_radius(const plan::Piece& piece) {
    Length most;
    for (const plan::LimitCurve& curve : piece.limit_curves)
        for (const auto& [spacing, radius] : curve.points) most = std::max(most, radius);
    return most;
}

Length least_radius(const plan::LimitCurve& curve) {
    const auto by_radius = [](const auto& a, const auto& b) { return a.second < b.second; };
    return std::min_element(curve.points.begin(), curve.points.end(), by_radius)->second;
}

Length most_spacing(const plan::Piece& piece) {
    Length most = governing_kerf(piece).spacing;
    for (const plan::LimitCurve& curve : piece.limit_curves)
        for (const auto& [spacing, radius] : curve.points) most = std::max(most, spacing);
    return most;
}

/// The next even step that is no less.
Length round_up(Length value, Length step) { return step * std::ceil(value / step - 1e-9); }

class LimitChart {
public:
    LimitChart(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape)
        : pen_(pen),
          piece_(piece),
          tape_(tape),
          radius_end_(radius_axis_end(piece, tape.unit())),
          spacing_step_(tape_step(most_spacing(piece), 6, tape.unit())),
          spacing_end_(round_up(most_spacing(piece), spacing_step_)),
          right_end_(space.high.x),
          graph_{{{space.low.x + left_room, space.low.y + below}, {space.high.x - right_room, space.high.y - above}}},
          labels_(pen, graph_.area) {}

    void draw() {
        pen_.text(Role::text, {graph_.area.low.x, graph_.area.high.y + 5_pt},
                  words(inch() ? "strain.radius_inch" : "strain.radius_mm"), small());
        grid();
        curves();
        job();
        leaders();
    }

private:
    const fonts::Style& style() const { return pen_.kit().style; }
    std::string words(std::string_view key, const fonts::Words::Values& values = {}) const {
        return pen_.kit().words(key, values);
    }
    Type small(bool strong = false) const { return {strong ? Face::bold : Face::regular, style().small}; }
    std::string spacing_words() const { return words(inch() ? "strain.spacing_inch" : "strain.spacing_mm"); }
    bool inch() const { return tape_.unit() == Unit::inch; }
    Point at(Length spacing, Length radius) const { return graph_.at(spacing / spacing_end_, radius / radius_end_); }
    bool is_jobs(const plan::LimitCurve& curve) const {
        return measure::abs(curve.depth - piece_.cut.depth) < 0.001_mm;
    }

    void grid() {
        const Rect& area = graph_.area;
        const Length radius_step = tape_step(radius_end_, 6, tape_.unit());
        for (Length r; r <= radius_end_ * (1 + 1e-9); r += radius_step) {
            const Point on = at({}, r);
            if (r > 0_mm) pen_.line(Role::dimension, on, {area.high.x, on.y}, style().hair);
            pen_.text(Role::text, {area.low.x - 7_pt, on.y - 3.2_pt}, tape_.exact_plain(r), small().at_right());
        }
        for (Length s; s <= spacing_end_ * (1 + 1e-9); s += spacing_step_) {
            const Point on = at(s, {});
            if (s > 0_mm) pen_.line(Role::dimension, on, {on.x, area.high.y}, style().hair);
            pen_.text(Role::text, {on.x, area.low.y - 13_pt}, tape_.exact_plain(s), small().centred());
        }
        pen_.box(Role::outline, area, style().line);
        pen_.text(Role::text, {area.high.x, area.low.y - 25_pt}, spacing_words(), small().at_right());
    }

    /// The job's own depth as a heavy line, the others by their dashes.
    void curves() {
        std::vector<Dash> left{Dash::dashed, Dash::dash_dot, Dash::dotted};
        std::vector<std::pair<Length, const plan::LimitCurve*>> ends;
        for (const plan::LimitCurve& curve : piece_.limit_curves) {
            Dash dash = Dash::solid;
            if (!is_jobs(curve)) {
                dash = left.front();
                left.erase(left.begin());
            }
            std::vector<Point> points;
            for (const auto& [spacing, radius] : curve.points) points.push_back(at(spacing, radius));
            const std::vector<Path> parts = graph_.inside(points);
            for (const Path& part : parts) {
                pen_.stroke(Role::outline, part, is_jobs(curve) ? style().heavy : style().line, dash);
                labels_.taken().take(part);
            }
            if (parts.empty()) continue;
            // A curve that ends below the frame's top is named at its end, one that leaves by the top beside a leader.
            if (graph_.area.high.y - points.back().y > 6_pt) ends.emplace_back(points.back().y, &curve);
            else led_.emplace_back(parts.back(), &curve);
        }
        names(std::move(ends));
    }

    void names(std::vector<std::pair<Length, const plan::LimitCurve*>> ends) {
        std::sort(ends.begin(), ends.end());
        Length lowest = graph_.area.low.y;
        for (const auto& [height, curve] : ends) {
            const Length base = std::max(height - 3.2_pt, lowest);
            const Length x = graph_.area.high.x + 8_pt;
            pen_.text(Role::text, {x, base}, name(*curve),
                      pen_.fitting(name(*curve), small(is_jobs(*curve)), right_end_ - x));
            lowest = base + 12_pt;
        }
        names_end_ = lowest;
    }

    void leaders() {
        std::vector<std::pair<Path, const plan::LimitCurve*>> left;
        for (const auto& [path, curve] : led_)
            if (!labels_.with_leader(Role::text, Block(pen_, {{name(*curve), small(is_jobs(*curve))}}).on_white(), path,
                                     Beside::left))
                left.emplace_back(path, curve);
        lead_out(std::move(left));
    }

    /// Names of curves that leave by the top and find no room inside: outside at the right, from the top down, each
    /// with a line from a dot on its curve; the lowest curve has the lowest name, so that it is not crossed.
    void lead_out(std::vector<std::pair<Path, const plan::LimitCurve*>> curves) {
        std::sort(curves.begin(), curves.end(),
                  [](const auto& a, const auto& b) { return a.first.end().x < b.first.end().x; });
        const Length x = graph_.area.high.x + 8_pt;
        Length base = graph_.area.high.y - 9_pt;
        for (const auto& [path, curve] : curves) {
            if (base < names_end_) return;
            const Length level = base + 3.2_pt;
            Point on = path.end();
            for (const geom::Segment& s : path.segments())
                for (const double fraction : geom::crossings(s, {{}, level}, {1, 0})) on = s.point(fraction);
            pen_.line(Role::text, on, {x - 2_pt, level}, style().hair);
            pen_.fill(Role::text, Path::circle(on, 1.2_pt));
            pen_.text(Role::text, {x, base}, name(*curve),
                      pen_.fitting(name(*curve), small(is_jobs(*curve)), right_end_ - x));
            base -= 12_pt;
        }
    }

    std::string name(const plan::LimitCurve& curve) const {
        return words(leaves_thin_web(piece_, curve) ? "strain.deep_thin" : "strain.deep",
                     {{"depth", tape_.exact(curve.depth)}});
    }

    void job() {
        const Length spacing = governing_kerf(piece_).spacing;
        const bool beyond = piece_.radii.finish > radius_end_;
        const Point on = at(spacing, std::min(piece_.radii.finish, radius_end_));
        if (beyond) beyond_arrow(pen_, on);
        else ringed_dot(pen_, on);
        labels_.taken().take(Path::circle(on, dot_ring_radius));
        if (beyond) labels_.taken().take(Path::line(on, {on.x, on.y - 24_pt}));
        const Length beside = std::max(on.x - graph_.area.low.x, graph_.area.high.x - on.x) - dot_ring_radius - 12_pt;
        const auto ways = words_of_job(spacing, beside);
        for (const std::vector<Block::Row>& rows : ways)
            if (name_job(on, Block(pen_, rows).on_white())) return;
        // Nowhere in the frame: below it, behind a ring like the point's.
        const std::string& first = ways.back().front().text;
        const std::string all = first.substr(first.find(": ") + 2) + " " + ways.back().back().text;
        const Point base{graph_.area.low.x - left_room + 16_pt, graph_.area.low.y - 25_pt};
        const Length room = graph_.area.high.x - base.x - pen_.width(spacing_words(), small()) - 8_pt;
        ringed_dot(pen_, base + Point{-dot_ring_radius - 5_pt, 3.2_pt});
        pen_.text(Role::text, base, all, pen_.fitting(all, small(true), room));
    }

    /// In one row, unless it would take most of the frame; in two; in two as narrow as the room beside the point.
    std::vector<std::vector<Block::Row>> words_of_job(Length spacing, Length beside) const {
        const std::string all = words(
            "strain.this_job", {{"spacing", tape_.exact(spacing)}, {"radius", tape_.with_unit(piece_.radii.finish)}});
        const std::size_t comma = all.rfind(", ");
        const std::string first = all.substr(0, comma + 1), second = all.substr(comma + 2);
        std::vector<std::vector<Block::Row>> ways;
        if (pen_.width(all, small(true)) < graph_.area.width() * 0.6) ways.push_back({{all, small(true)}});
        ways.push_back({{first, small(true)}, {second, small(true)}});
        ways.push_back({{first, pen_.fitting(first, small(true), beside)}, {second, small(true)}});
        return ways;
    }

    /// Beside the point, or farther off with a leader to it; false where there is no room.
    bool name_job(Point on, const Block& block) {
        const Length across = block.width() / 2 + dot_ring_radius + 5_pt;
        for (const Length up : {0_pt, 13_pt, -13_pt, 24_pt, -24_pt, 36_pt, -36_pt, 48_pt, -48_pt, 60_pt, -60_pt})
            for (const double part : {1.0, -1.0, 0.0, 0.5, -0.5}) {
                const bool far = measure::abs(up) > 20_pt;
                if (std::abs(part) < 1 && !far) continue;
                const Point centre = on + Point{across * part, up};
                if (!labels_.place(Role::text, block, centre, {1, 0}, 2_pt)) continue;
                if (far) lead_to(on, block.box(centre, {1, 0}, 2_pt).bounds());
                return true;
            }
        return false;
    }

    void lead_to(Point on, const Rect& label) {
        const Point end{std::clamp(on.x, label.low.x, label.high.x), std::clamp(on.y, label.low.y, label.high.y)};
        pen_.line(Role::text, on + geom::direction(on, end) * dot_ring_radius, end, style().line);
    }

    Pen& pen_;
    const plan::Piece& piece_;
    const Tape& tape_;
    Length radius_end_;
    Length spacing_step_;
    Length spacing_end_;
    Length right_end_;
    Graph graph_;
    Labels labels_;
    std::vector<std::pair<Path, const plan::LimitCurve*>> led_;  ///< curves to name beside a leader
    Length names_end_;                                           ///< above the names at the right
};

}  // namespace

bool leaves_thin_web(const plan::Piece& piece, const plan::LimitCurve& curve) {
    return piece.cut.thinnest() - curve.depth < bend::thin_web - 0.001_mm;
}

Length radius_axis_end(const plan::Piece& piece, Unit unit) {
    const Length curves = most_radius(piece);
    const Length job = piece.radii.finish;
    Length lowest;  // of each curve some part is to be seen
    for (const plan::LimitCurve& curve : piece.limit_curves)
        if (!curve.points.empty()) lowest = std::max(lowest, least_radius(curve));
    const Length wanted =
        std::max(std::min({std::max(curves, job) * 1.1, curves * far_out, job * far_out}), lowest * 1.25);
    const Length step = tape_step(wanted, 6, unit);
    const Length end = round_up(wanted, step);
    // The ring of the job's point keeps off the words above the frame.
    return job <= end && job * 1.05 > end ? end + step : end;
}

void draw_limit_chart(Pen& pen, const Rect& space, const plan::Piece& piece, const Tape& tape) {
    if (most_radius(piece) > 0_mm) {
        const Scope figure = pen.figure(pen.kit().words("figure.limits", {{"piece", piece.id}}));
        LimitChart(pen, space, piece, tape).draw();
        return;
    }
    const Type type{Face::regular, pen.kit().style.text};
    pen.paragraph(Role::text, {space.low.x, space.high.y - 16_pt}, pen.kit().words("strain.chart_none"), type,
                  space.width(), type.size * 1.3);
}

}  // namespace kerfpacket::sheets
